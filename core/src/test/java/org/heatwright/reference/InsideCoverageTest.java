package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** A few firings of {@link InsideStudy}, whose whole answer is in docs/models/burnout.md. */
class InsideCoverageTest {

  @Test
  void coresOfStrangeMouldsInStrangeKilnsAreMostlyInTheirBand() {
    List<InsideStudy.Outcome> outcomes =
        LongStream.range(24, 30)
            .parallel()
            .mapToObj(InsideStudy::of)
            .flatMap(Optional::stream)
            .toList();
    assertThat(outcomes).hasSizeGreaterThan(4);
    assertThat(outcomes)
        .allSatisfy(
            o -> {
              assertThat(o.plateauShare()).as("%s", o).isBetween(-0.25, 0.25);
              assertThat(o.atEnd()).as("%s", o).isBetween(-15.0, 15.0);
              assertThat(o.bandKelvins()).as("%s", o).isLessThan(25);
            });
    assertThat(outcomes.stream().mapToDouble(InsideStudy.Outcome::inBand).average().orElseThrow())
        .isGreaterThan(0.75);
  }
}
