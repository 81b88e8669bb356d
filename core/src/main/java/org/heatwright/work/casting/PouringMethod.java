package org.heatwright.work.casting;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.material.Origin;

/** What drives the metal into the mould, and how much is poured beyond the casting. */
public enum PouringMethod {
  VACUUM(
      new Spread(0.10, 0.10, 0.25),
      Origin.read(
          Sources.METAL_WEIGHTS.text()
              + ": 10 %; 25 % for small casts: "
              + Sources.WAX_TO_METAL.text())),
  CENTRIFUGAL(VACUUM.buttonShare, VACUUM.buttonOrigin),
  GRAVITY(
      new Spread(0.25, 0.35, 0.50),
      Origin.read(Sources.WAX_TO_METAL.text() + ": 25 to 50 %; the usual value is between"));

  /** What sprues add where only the pieces were weighed. {@code estimate:} */
  public static final Spread SPRUES_SHARE = new Spread(0.10, 0.20, 0.30);

  private final Spread buttonShare;
  private final Origin buttonOrigin;

  PouringMethod(Spread buttonShare, Origin buttonOrigin) {
    this.buttonShare = buttonShare;
    this.buttonOrigin = buttonOrigin;
  }

  public static Optional<PouringMethod> ofWord(String word) {
    return Arrays.stream(values()).filter(m -> m.word().equalsIgnoreCase(word)).findFirst();
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Metal for the button, as a share of casting and sprues. */
  public Spread buttonShare() {
    return buttonShare;
  }

  public Origin buttonOrigin() {
    return buttonOrigin;
  }
}
