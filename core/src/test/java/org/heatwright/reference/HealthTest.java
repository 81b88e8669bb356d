package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.KilnHealth;
import org.heatwright.learn.KilnHealth.Aspect;
import org.heatwright.learn.KilnHealth.Concern;
import org.heatwright.reference.HealthStudy.Life;
import org.junit.jupiter.api.Test;

/**
 * Lives of a kiln that is not of the product's model. Coverage over many: {@link HealthStudy},
 * {@code docs/models/health.md}.
 */
class HealthTest {

  /** A brick muffle with a proportional control. */
  private static final long KILN = 3;

  private static final int FIRINGS = 5;

  private static KilnHealth health(Life life) {
    List<DatedFiring> lived = HealthStudy.lived(KILN, life, FIRINGS);
    return KilnHealth.of(KilnPopulation.draw(KILN).nameplate(), lived);
  }

  private static KilnHealth.Point last(KilnHealth health, Aspect aspect) {
    return health.points().get((aspect.ordinal() + 1) * FIRINGS - 1);
  }

  private static Concern concern(KilnHealth health, Aspect aspect) {
    return health.findings().get(aspect.ordinal()).concern();
  }

  @Test
  void nothingIsSaidWhereNothingChanges() {
    KilnHealth health = health(Life.NOTHING);
    for (Aspect aspect : Aspect.values()) {
      assertThat(concern(health, aspect)).as("%s", aspect).isEqualTo(Concern.NONE);
      assertThat(last(health, aspect).relative().contains(1)).as("%s", aspect).isTrue();
    }
  }

  @Test
  void aNinthLessPowerIsFoundAndNotBlamedOnTheDoor() {
    KilnHealth health = health(Life.ELEMENTS_AGE);
    assertThat(last(health, Aspect.POWER).relative().contains(0.91))
        .as("%s", last(health, Aspect.POWER))
        .isTrue();
    assertThat(concern(health, Aspect.POWER)).isIn(Concern.CHANGED, Concern.WARNING);
    assertThat(concern(health, Aspect.LOSS)).isEqualTo(Concern.NONE);
  }

  @Test
  void aLeakTwiceAsLargeIsFoundAndNotBlamedOnTheElements() {
    KilnHealth health = health(Life.SEAL_FAILS);
    double celsius = HealthStudy.held(HealthStudy.lived(KILN, Life.NOTHING, FIRINGS));
    double truth = HealthStudy.lossRatio(KILN, celsius, 2);
    assertThat(last(health, Aspect.LOSS).relative().contains(truth))
        .as("%s, true %s", last(health, Aspect.LOSS), truth)
        .isTrue();
    assertThat(concern(health, Aspect.LOSS)).isNotEqualTo(Concern.NONE);
    assertThat(concern(health, Aspect.POWER)).isEqualTo(Concern.NONE);
  }
}
