package org.voltdocket.catalogue;

import java.math.BigDecimal;
import org.voltdocket.kernel.BatterySerial;

/**
 * A serial taken apart: what it begins with and the running number at its end.
 *
 * @param digits how many digits the number has; 0 where the serial ends in none
 */
record SerialShape(String stem, int digits, BigDecimal number) {

    static SerialShape of(BatterySerial serial) {
        String text = serial.value();
        int cut = text.length();
        while (cut > 0 && Character.isDigit(text.charAt(cut - 1))) {
            cut--;
        }
        String number = text.substring(cut);
        return new SerialShape(
                text.substring(0, cut), number.length(), number.isEmpty() ? BigDecimal.ZERO : new BigDecimal(number));
    }

    /** Whether both are numbered the same way, so that one may end a range that the other begins. */
    boolean like(SerialShape other) {
        return stem.equals(other.stem) && digits == other.digits;
    }
}
