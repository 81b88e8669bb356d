package org.heatwright.reference;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;

/** What enamelling sessions of random kilns teach, and whether faults are told of them. */
final class EnamelSessionStudy {

  private EnamelSessionStudy() {}

  /** Prints a line a session. Arguments: first seed, one after the last. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    for (long seed = Long.parseLong(arguments[0]); seed < Long.parseLong(arguments[1]); seed++) {
      EnamelSession session = EnamelSession.draw(seed);
      if (!session.possible()) {
        System.out.printf("S %d not possible%n", seed);
        continue;
      }
      for (int kind = 0; kind < 4; kind++) {
        boolean told = kind % 2 == 0;
        double onset = session.openings().get(2)[0] + 30;
        Optional<Fault> fault = kind < 2 ? Optional.empty() : Optional.of(Fault.elementOpen(onset));
        RichFiring run = session.fire(fault);
        LoggedFiring log = session.logged(run, told);
        long began = System.nanoTime();
        Lesson lesson = KilnLearner.learn(session.kiln().nameplate(), List.of(log));
        System.out.printf(
            "S %d %s %s %s %s openings %d of %d fall %.0f to %.0f, fit %.1f K, faults %s, door %.2f sd %.2f piece %s true %.0f kJ (%.1f s)%n",
            seed,
            session.kiln().nameplate().door(),
            session.kiln().nameplate().control().kind() == Control.Kind.ON_OFF ? "on-off" : "pid",
            told ? "told" : "read",
            fault.isPresent() ? "ELEMENT@%.0f".formatted(onset / 60) : "clean",
            log.session().openings().size(),
            session.openings().size(),
            log.session().openings().stream().mapToDouble(o -> o.fallKelvins()).min().orElse(0),
            log.session().openings().stream().mapToDouble(o -> o.fallKelvins()).max().orElse(0),
            lesson.firings().isEmpty() ? Double.NaN : lesson.misfitKelvins(0),
            lesson.happened().stream()
                .map(
                    h ->
                        "%s%s@%.1f"
                            .formatted(
                                h.what().kind(),
                                h.what().alternatives(),
                                h.what().beganSeconds() / 60)
                            + " gain %.0f".formatted(2 * h.what().logOddsFactor()))
                .toList(),
            KilnQuantity.DOOR.value(lesson.beliefs().score(KilnQuantity.DOOR)),
            lesson.beliefs().ignoranceFactor(KilnQuantity.DOOR),
            lesson.openings().stream()
                .flatMap(o -> o.coldKilojoules().stream())
                .map(b -> "%.0f (%.0f to %.0f)".formatted(b.median(), b.low(), b.high()))
                .findFirst()
                .orElse("-"),
            session.joulesPerKelvin() * 0.8,
            (System.nanoTime() - began) / 1e9);
      }
    }
  }
}
