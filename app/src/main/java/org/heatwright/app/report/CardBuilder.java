package org.heatwright.app.report;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.forecast.Forecast;
import org.heatwright.inspect.Finding;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;

/**
 * Gathers what a card needs. Schedule, kiln and forecast are enough; everything else is optional.
 * Belongs to one thread while it is filled.
 */
public final class CardBuilder {

  private final Schedule schedule;
  private final Kiln kiln;
  private final Forecast forecast;
  private OptionalInt slot = OptionalInt.empty();
  private Optional<ZonedDateTime> start = Optional.empty();
  private Optional<String> responsible = Optional.empty();
  private Optional<String> phone = Optional.empty();
  private List<Finding> findings = List.of();

  private CardBuilder(Schedule schedule, Kiln kiln, Forecast forecast) {
    this.schedule = schedule;
    this.kiln = kiln;
    this.forecast = forecast;
  }

  /** The schedule as it will be keyed, where, and what will happen. */
  public static CardBuilder of(Schedule schedule, Kiln kiln, Forecast forecast) {
    return new CardBuilder(schedule, kiln, forecast);
  }

  public CardBuilder slot(int number) {
    slot = OptionalInt.of(number);
    return this;
  }

  /** When the program's first segment begins. */
  public CardBuilder start(ZonedDateTime programStart) {
    start = Optional.of(programStart);
    return this;
  }

  /** Role of the responsible person, e.g. "caster". */
  public CardBuilder responsible(String role) {
    responsible = Optional.of(role);
    return this;
  }

  public CardBuilder phone(String number) {
    phone = Optional.of(number);
    return this;
  }

  public CardBuilder findings(List<Finding> all) {
    findings = List.copyOf(all);
    return this;
  }

  public Card build() {
    throw new IllegalStateException(
        "Building a card has not landed yet: %s in %s, %s, slot %s, start %s, %s, %s, %d findings."
            .formatted(
                schedule.name(),
                kiln.name(),
                forecast.endSeconds(),
                slot,
                start,
                responsible,
                phone,
                findings.size()));
  }
}
