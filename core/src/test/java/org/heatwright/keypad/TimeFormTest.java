package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeFormTest {

  @ParameterizedTest
  @CsvSource({
    "MINUTES, 150",
    "HOURS_DOT_MINUTES, 2.30",
    "HOURS_COLON_MINUTES, 02:30",
    "DECIMAL_HOURS, 2.5"
  })
  void twoHoursThirtyInEachForm(TimeForm form, String text) {
    assertThat(form.text(BigDecimal.valueOf(150), 1)).isEqualTo(text);
    assertThat(form.minutes(text).orElseThrow()).isEqualByComparingTo("150");
  }

  @ParameterizedTest
  @CsvSource({
    "HOURS_DOT_MINUTES, 2.3",
    "HOURS_DOT_MINUTES, 2.60",
    "HOURS_DOT_MINUTES, 230",
    "HOURS_COLON_MINUTES, 02:75",
    "MINUTES, 2.30",
    "MINUTES, 2:30",
    "HOURS_UNSURE, 1.50",
    "DECIMAL_HOURS, 2:30",
    "MINUTES, ''",
    "MINUTES, x"
  })
  void whatMeansNothingCertainIsNotRead(TimeForm form, String text) {
    assertThat(form.minutes(text)).isEmpty();
  }

  @Test
  void sameDigitsMeanDifferentTimesInDifferentForms() {
    assertThat(TimeForm.HOURS_DOT_MINUTES.minutes("1.50").orElseThrow())
        .isEqualByComparingTo("110");
    assertThat(TimeForm.DECIMAL_HOURS.minutes("1.50").orElseThrow()).isEqualByComparingTo("90");
  }

  @Test
  void wholeHoursAreCertainEvenWhereTheFractionIsNot() {
    assertThat(TimeForm.HOURS_UNSURE.minutes("2.00").orElseThrow()).isEqualByComparingTo("120");
  }
}
