package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ScenariosTest {

  static List<Scenarios.Scenario> scenarios() {
    return Scenarios.all();
  }

  @ParameterizedTest
  @MethodSource("scenarios")
  void everyStudioGetsAScheduleThatPassesItsOwnInspection(Scenarios.Scenario scenario) {
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    assertThat(
            Inspector.inspect(
                Inspection.of(composed.schedule()).in(scenario.kiln()).forWork(composed.demands())))
        .noneMatch(f -> f.severity() != Severity.NOTE);
    assertThat(composed.moments()).anyMatch(m -> m.kind() == Moment.Kind.READY);
    assertThat(composed.cautions()).isNotEmpty();
  }
}
