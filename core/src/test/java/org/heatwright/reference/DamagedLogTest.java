package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What is learned from a damaged log of a random kiln forecasts another firing as the clean log
 * does. A few kilns here; {@link DamagedLogStudy} looks at many.
 */
class DamagedLogTest {

  private static final Map<Long, DamagedLogStudy> STUDIES = new ConcurrentHashMap<>();

  private static DamagedLogStudy study(long seed) {
    return STUDIES.computeIfAbsent(seed, DamagedLogStudy::new);
  }

  private static void staysAsForecast(DamagedLogStudy study, DamagedLog damage) {
    DamagedLogStudy.Outcome clean = study.clean(damage);
    DamagedLogStudy.Outcome damaged = study.of(damage);
    if (INFORMATION_LOST.contains(damage) && damaged.holds() && width(damaged) > width(clean)) {
      return;
    }
    assertThat(damaged.end())
        .as("%s: %s", damage, damaged.told())
        .isCloseTo(clean.end(), within(Math.max(120, 0.01 * clean.end())));
  }

  /** They tell less of the kiln: a band that is wider for it and holds the truth will do. */
  private static final Set<DamagedLog> INFORMATION_LOST =
      EnumSet.of(DamagedLog.CUT, DamagedLog.LATE, DamagedLog.WARM_AND_LATE, DamagedLog.BY_HAND);

  private static double width(DamagedLogStudy.Outcome outcome) {
    return outcome.forecast().endSeconds().high() - outcome.forecast().endSeconds().low();
  }

  @ParameterizedTest
  @EnumSource(DamagedLog.class)
  void aDamagedLogTellsWhatACleanOneTells(DamagedLog damage) {
    staysAsForecast(study(3004), damage);
  }

  @ParameterizedTest
  @EnumSource(
      value = DamagedLog.class,
      names = {"SLIPS", "EARLY", "LATE", "BY_HAND"})
  void soItIsWithAnotherKiln(DamagedLog damage) {
    staysAsForecast(study(3003), damage);
  }

  @ParameterizedTest
  @CsvSource({
    "EARLY, The log starts about 3 h 20 min before the program",
    "KEYED, The log's clock is about 3 h 20 min ahead of the program",
    "FORWARD, the log's clock leaps forward by 1 h while the display goes on"
  })
  void aCorrectionIsTold(DamagedLog damage, String words) {
    assertThat(study(3004).of(damage).told()).singleElement().asString().contains(words);
  }

  @ParameterizedTest
  @EnumSource(
      value = DamagedLog.class,
      names = {"CLEAN", "GAPS", "SLIPS", "WARM", "WARM_AND_LATE", "CUT", "MINUTES", "BY_HAND"})
  void aClockThatIsRightIsLeftAlone(DamagedLog damage) {
    assertThat(study(3004).of(damage).told()).isEmpty();
  }

  /** Energy with a meter: within 3 % of what the firing took. */
  @ParameterizedTest
  @EnumSource(
      value = DamagedLog.class,
      names = {"RELAY", "POWER"})
  void aMeterTellsTheEnergy(DamagedLog damage) {
    DamagedLogStudy.Outcome outcome = study(3004).of(damage);
    assertThat(outcome.forecast().energyKilowattHours().median())
        .isCloseTo(outcome.truthKilowattHours(), within(0.03 * outcome.truthKilowattHours()));
  }
}
