package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FoundTest {

  @ParameterizedTest
  @ValueSource(strings = {"burnout", "enamel", "sinter", "heat-treat", "glass", "no kind we know"})
  void goodFirstAndOtherLastAndNoneTwice(String kind) {
    List<Found> found = Found.after(kind);
    assertThat(found).hasSizeBetween(5, 12);
    assertThat(found.get(0).code()).isEqualTo("good");
    assertThat(found.get(found.size() - 1).code()).isEqualTo("other");
    assertThat(found).extracting(Found::code).doesNotHaveDuplicates();
    assertThat(found).extracting(Found::words).doesNotHaveDuplicates();
    // No wider than the boxes that the card with the least room was laid out for.
    assertThat(found.stream().mapToInt(f -> f.words().length()).sum()).isLessThanOrEqualTo(82);
  }

  /** Records of years are compared by these: a code may be added here, never changed or removed. */
  @Test
  void codesNeverChange() {
    assertThat(codes("burnout"))
        .contains("good", "incomplete", "porous", "flash", "bubbles", "carbon", "crack", "other");
    assertThat(codes("enamel"))
        .contains("under-fired", "over-fired", "orange-peel", "pulled-through", "pits", "chip");
    assertThat(codes("sinter")).contains("unsintered", "brittle", "blisters", "slumped");
    assertThat(codes("heat-treat")).contains("too-hard", "too-soft", "fire-stain", "coarse-grain");
    assertThat(codes("glass")).contains("devit", "under-fired", "over-fired", "crack", "stress");
  }

  private static List<String> codes(String kind) {
    return Found.after(kind).stream().map(Found::code).toList();
  }

  /** Every kind of work has a list of its own. */
  @Test
  void everyKindHasItsOwn() {
    Map<List<Found>, String> lists = new HashMap<>();
    for (String kind : Set.of("burnout", "enamel", "sinter", "heat-treat", "glass")) {
      assertThat(lists.put(Found.after(kind), kind)).isNull();
    }
    assertThat(lists).doesNotContainKey(Found.afterAny());
  }

  @Test
  void aCodeIsKebabCase() {
    assertThatThrownBy(() -> new Found("Too Far", "too far"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("kebab-case");
  }
}
