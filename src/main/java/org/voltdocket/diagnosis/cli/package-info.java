/**
 * The command of the judge jar: assesses folders with a case request, test records and recordings. Start reading at
 * {@link org.voltdocket.diagnosis.cli.JudgeCommand}.
 */
package org.voltdocket.diagnosis.cli;
