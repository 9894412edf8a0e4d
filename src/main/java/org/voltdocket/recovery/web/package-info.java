/** Lists for suppliers over HTTP, for the distributor only. Start reading at RecoveryPage. */
package org.voltdocket.recovery.web;
