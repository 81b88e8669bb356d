package org.heatwright.app.plot;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.app.report.QuantityWords;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;

/**
 * What logs have taught: each quantity as the nameplate let one believe it, and as it is known now,
 * on the scale of that first belief.
 */
public final class LearnedPlot {

  private LearnedPlot() {}

  /**
   * @param kiln its name
   * @param firings from how many firings
   * @param known what is believed now
   * @param untold quantities the firings could not tell
   */
  public static Figure of(String kiln, int firings, KilnBeliefs known, List<KilnQuantity> untold) {
    List<KilnQuantity> quantities =
        Arrays.stream(KilnQuantity.values()).filter(KilnQuantity::learnable).toList();
    List<Layer> layers = new ArrayList<>();
    double reach = 1.15 * NINE_IN_TEN;
    int told = 0;
    for (int row = 0; row < quantities.size(); row++) {
      KilnQuantity quantity = quantities.get(row);
      double low = quantity.score(known.low(quantity));
      double middle = known.score(quantity);
      double high = quantity.score(known.high(quantity));
      layers.add(new Layer.Lying(row, -NINE_IN_TEN, 0, NINE_IN_TEN, true, Look.BEFORE));
      String before = QuantityWords.range(KilnBeliefs.prior(), quantity);
      String unit = " " + QuantityWords.unit(quantity);
      if (untold.contains(quantity)) {
        layers.add(new Layer.Lying(row, low, middle, high, true, Look.HOLLOW));
        layers.add(
            new Layer.Row(row, QuantityWords.name(quantity), "not told, still " + before + unit));
      } else {
        told++;
        layers.add(new Layer.Lying(row, low, middle, high, false, Look.AFTER));
        String now = QuantityWords.range(known, quantity);
        layers.add(
            new Layer.Row(row, QuantityWords.name(quantity), now + ", was " + before + unit));
      }
      reach = Math.max(reach, 1.08 * Math.max(Math.abs(low), Math.abs(high)));
    }
    List<Figure.Key> keys = new ArrayList<>();
    keys.add(new Figure.Key(Figure.Kind.BEFORE, "what the nameplate lets one believe"));
    if (told > 0) {
      keys.add(new Figure.Key(Figure.Kind.AFTER, "known now"));
    }
    if (told < quantities.size()) {
      keys.add(new Figure.Key(Figure.Kind.HOLLOW, "not told"));
    }
    Axis scale =
        new Axis(
            -reach,
            reach,
            List.of(
                new Axis.Tick(-NINE_IN_TEN, "low", ""),
                new Axis.Tick(0, "usual", ""),
                new Axis.Tick(NINE_IN_TEN, "high", "")),
            "");
    return new Figure(
        "What is known of %s from %s"
            .formatted(kiln, firings == 1 ? "1 firing" : firings + " firings"),
        "Each bar says where a quantity lies, nine times in ten. The logs tell %d of %d."
            .formatted(told, quantities.size()),
        scale,
        List.of(new Figure.Panel("", new Axis(0, 1, List.of(), ""), quantities.size(), layers)),
        keys);
  }
}
