/** Lists for suppliers over HTTP, for the distributor only. Start reading at RecoveryPage. */
package org.voltdocket.claim.recovery.web;
