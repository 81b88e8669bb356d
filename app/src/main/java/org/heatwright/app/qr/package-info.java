/**
 * QR codes (ISO/IEC 18004): making one of a text, and finding one in a picture or on a PDF's pages.
 * What the text means is told elsewhere.
 *
 * <p><b>Units:</b> modules, pixels. <b>Threads:</b> static and without state. <b>Depends on:</b>
 * ZXing, PDFBox, the platform's image readers; nothing else of ours but {@code files} for its
 * complaints. <b>Errors:</b> {@link org.heatwright.app.files.InputException}, one sentence for
 * people.
 */
@NullMarked
package org.heatwright.app.qr;

import org.jspecify.annotations.NullMarked;
