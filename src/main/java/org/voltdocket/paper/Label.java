package org.voltdocket.paper;

import java.util.List;

/**
 * The text of a label.
 *
 * @param code printed as Code 128 (ISO/IEC 15417) and in letters below it
 * @param address printed as QR code (ISO/IEC 18004)
 * @param heading the largest line
 * @param lines below it
 * @param cautions in small type; the type shrinks until all of them fit
 */
public record Label(String code, String address, String heading, List<String> lines, List<String> cautions) {

    public Label {
        lines = List.copyOf(lines);
        cautions = List.copyOf(cautions);
    }
}
