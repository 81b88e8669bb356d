package org.heatwright.app.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.app.casting.CastWords;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.PourSheet;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.CastingClocks;
import org.heatwright.work.casting.Proposal;
import org.heatwright.work.casting.Spread;

/**
 * The pour at the end of a firing, a phrase each, for the card and the bench.
 *
 * @param sheet what will be poured
 * @param forecast of the firing
 * @param unit degrees people read
 * @param when says moments
 */
public record PourWords(PourSheet sheet, Forecast forecast, TemperatureUnit unit, WhenWords when) {

  /** In the order in which a caster needs them. */
  public List<Card.Fact> facts() {
    List<Card.Fact> facts = new ArrayList<>();
    facts.add(new Card.Fact("mould", mould()));
    facts.add(new Card.Fact("cores there", cores()));
    facts.add(new Card.Fact("out of the kiln", keeps()));
    sheet
        .plan()
        .metal()
        .ifPresent(
            metal ->
                facts.add(
                    new Card.Fact(
                        "metal", degrees(metal.value()) + ", " + from(metal) + liquid())));
    sheet.metalKilograms().ifPresent(all -> facts.add(new Card.Fact("metal to melt", toMelt(all))));
    if (sheet.plan().question().binder() != Binder.PHOSPHATE) {
      clock("standing", "before the kiln", "a filled mould stands %s, unmoved")
          .ifPresent(facts::add);
      clock(
              "quench",
              "quench",
              "%s after the pour, the button no longer red: it throws steam and slurry; break out wet")
          .ifPresent(facts::add);
    }
    return facts;
  }

  private String mould() {
    return "%s all through, %s"
        .formatted(
            degrees(sheet.mould()),
            sheet
                .plan()
                .mould()
                .map(
                    proposal ->
                        proposal.own() && !proposal.value().equals(sheet.mould())
                            ? "by the schedule; your own value %s, %s"
                                .formatted(degrees(proposal.value()), sources(proposal))
                            : proposal.own() ? from(proposal) : sources(proposal))
                .orElse("no source tells"));
  }

  private String from(Proposal proposal) {
    return (proposal.own() ? "your own value; " : "") + sources(proposal);
  }

  private String sources(Proposal proposal) {
    return "sources " + CastWords.degrees(proposal.range().from(), proposal.range().to(), unit);
  }

  private String liquid() {
    return sheet.plan().question().liquidus().map(t -> "; liquid at " + degrees(t)).orElse("");
  }

  /** When the slowest core is at the pour's temperature. */
  private String cores() {
    if (forecast.work().isEmpty()
        || forecast.work().stream().anyMatch(place -> place.readySeconds().isEmpty())) {
      return "not surely before the program ends: look at the inside first";
    }
    WorkForecast slowest =
        forecast.work().stream()
            .max(Comparator.comparingDouble(p -> p.readySeconds().orElseThrow().median()))
            .orElseThrow();
    return "%s (%s)%s"
        .formatted(
            when.full(slowest.readySeconds().orElseThrow().median()),
            when.band(slowest.readySeconds().orElseThrow()),
            sheet.kinds().size() > 1 ? ", mould %d last".formatted(slowest.mould()) : "");
  }

  /** How long the wall keeps its heat. */
  private String keeps() {
    PourSheet.Kind kind = sheet.quickest();
    return "the wall by the pattern is under %s after %s in the air, %s in a cradle%s: melt first"
        .formatted(
            degrees(sheet.least()),
            time(kind.airSeconds()),
            time(kind.cradleSeconds()),
            sheet.kinds().size() > 1
                ? " (⌀ %.0f mm, the quickest)".formatted(kind.mould().diameterMetres() * 1000)
                : "");
  }

  private static String time(Optional<Double> seconds) {
    if (seconds.isEmpty()) {
      return "more than an hour";
    }
    double value = seconds.get();
    return value < 100 ? "%.0f s".formatted(value) : "%.1f min".formatted(value / 60);
  }

  private String toMelt(Spread all) {
    String each =
        sheet.kinds().stream()
            .map(
                kind ->
                    "%d × %s"
                        .formatted(
                            kind.mould().count(),
                            CastWords.grams(kind.metal().orElseThrow().totalKilograms().usual())))
            .collect(Collectors.joining(" + "));
    boolean one = sheet.kinds().size() == 1 && sheet.kinds().get(0).mould().count() == 1;
    return one ? CastWords.grams(all) : "%s = %s".formatted(each, CastWords.grams(all));
  }

  private static Optional<Card.Fact> clock(String code, String label, String words) {
    return CastingClocks.all().stream()
        .filter(clock -> clock.code().equals(code))
        .map(CastingClock::minutes)
        .flatMap(Optional::stream)
        .map(minutes -> new Card.Fact(label, words.formatted(CastWords.minutes(minutes))))
        .findFirst();
  }

  private String degrees(Temperature temperature) {
    return CastWords.degrees(temperature, unit);
  }
}
