package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YamlEditTest {

  private static String put(String text, String path, String yaml) {
    return YamlEdit.put(text, "w", List.of(path.split("\\.")), yaml);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // what stands there is replaced
        "`a: 1`| a | 2 | `a: 2`",
        "`a: \"x: y\" # why\nb: 3`| a | 2 | `a: 2 # why\nb: 3`",
        "`a: {b: 1, c: [2, 3]}`| a.c | 4 | `a: {b: 1, c: 4}`",
        "`a:\n  b: 1\n  c: 2\n# end\n`| a.b | 7 | `a:\n  b: 7\n  c: 2\n# end\n`",
        "`é: ü𝄞\na: 1`| a | 2 | `é: ü𝄞\na: 2`",
        // what is not there is put behind the rest
        "`a: 1\n`| b | 2 | `a: 1\nb: 2\n`",
        "`a: 1 # one`| b | 2 | `a: 1 # one\nb: 2`",
        "`a: {}`| a.b | 2 | `a: {b: 2}`",
        "`a: {b: 1}`| a.c | 2 | `a: {b: 1, c: 2}`",
        "`a: {b: 1,\n  c: 2 # two\n  }`| a.d | 3 | `a: {b: 1,\n  c: 2, d: 3 # two\n  }`",
        "`a:\n  b: 1\n\n# next\nc: 3\n`| a.d | 4 | `a:\n  b: 1\n  d: 4\n\n# next\nc: 3\n`",
        "`a:\n- 1\n- {x: 2}\n# end`| b | 4 | `a:\n- 1\n- {x: 2}\nb: 4\n# end`",
        "`a: |\n  one\n  two\n`| b | 4 | `a: |\n  one\n  two\nb: 4\n`",
        // so are the mappings on the way
        "`a: 1`| b.c.d | 2 | `a: 1\nb: {c: {d: 2}}`",
        "`a: 1\nb:\nc: 3`| b.d | 2 | `a: 1\nb: {d: 2}\nc: 3`",
        "`{a: 1}`| b.c | 2 | `{a: 1, b: {c: 2}}`",
      })
  void aValueIsPutAndTheRestStays(String text, String path, String yaml, String changed) {
    assertThat(put(text, path, yaml)).isEqualTo(changed);
  }

  @Test
  void nothingIsPutUnderWhatIsNoMapping() {
    Inputs.refused(
        () -> put("a: 1\nb: [2]\n", "b.c", "3"),
        "w, line 2: b is no mapping, so nothing can be put under it; write its keys and values out.");
  }
}
