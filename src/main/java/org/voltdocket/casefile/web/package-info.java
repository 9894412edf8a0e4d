/** How addresses name cases. The API of cases lives in {@code dossier.web}, for its answers combine several rooms. */
package org.voltdocket.casefile.web;
