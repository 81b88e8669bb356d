package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.heatwright.forecast.EnsembleProgress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class HowFarTest {

  @Test
  void tellsWhatIsCounted() {
    assertThat(HowFar.sentence(EnsembleProgress.Part.KILNS, 37, 64))
        .isEqualTo("The firing is tried in kilns like this one: 37 of 64 are done.");
  }

  @ParameterizedTest
  @EnumSource
  void countsEveryPart(EnsembleProgress.Part part) {
    assertThat(HowFar.sentence(part, 3, 48)).contains("3 of 48").endsWith(".");
  }
}
