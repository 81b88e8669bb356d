package org.heatwright.app.plot;

import java.util.Locale;

/** The colours of the bench's page, for light and for dark. */
public enum Paint {
  SHEET(0xfbfbf9, 0x222729, 1, 1),
  INK(0x22282a, 0xe7e8e3, 1, 1),
  SOFT(0x566064, 0xa9b3b1, 1, 1),
  LINE(0xd3d8d4, 0x3a4244, 1, 1),
  EDGE(0x7d8885, 0x7f8b89, 1, 1),
  ACCENT(0x0b5f5b, 0x7fd0c3, 1, 1),
  BAND(0x0b5f5b, 0x7fd0c3, 0.2, 0.24),
  TINT(0x7a5200, 0xeec27a, 0.16, 0.2),
  HEAT_1(0x9a3412, 0xf0a27f, 0.06, 0.06),
  HEAT_2(0x9a3412, 0xf0a27f, 0.14, 0.14),
  HEAT_3(0x9a3412, 0xf0a27f, 0.23, 0.23),
  HEAT_4(0x9a3412, 0xf0a27f, 0.33, 0.33),
  HEAT_5(0x9a3412, 0xf0a27f, 0.44, 0.44),
  HEAT_6(0x9a3412, 0xf0a27f, 0.55, 0.55),
  HEAT_7(0x9a3412, 0xf0a27f, 0.67, 0.67),
  HEAT_8(0x9a3412, 0xf0a27f, 0.8, 0.8);

  private final int light;
  private final int dark;
  private final double lightOpacity;
  private final double darkOpacity;

  Paint(int light, int dark, double lightOpacity, double darkOpacity) {
    this.light = light;
    this.dark = dark;
    this.lightOpacity = lightOpacity;
    this.darkOpacity = darkOpacity;
  }

  /** What style sheets call it. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Red, green and blue as 0xRRGGBB, on a light ground. */
  int light() {
    return light;
  }

  double lightOpacity() {
    return lightOpacity;
  }

  /** The rule of a style sheet. */
  String rules(boolean onDark) {
    String colour = String.format("#%06x", onDark ? dark : light);
    double opacity = onDark ? darkOpacity : lightOpacity;
    String fill = opacity < 1 ? ";fill-opacity:" + opacity : "";
    return ".f-%s{fill:%s%s}.l-%s{stroke:%s}".formatted(word(), colour, fill, word(), colour);
  }
}
