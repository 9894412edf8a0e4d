/** Pages of the claims desk. Start reading at {@code DeskPageController}. */
package org.voltdocket.desk.web;
