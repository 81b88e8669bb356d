package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.heatwright.app.files.KilnFile;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.sensing.MeltCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers by hand from the table of docs/models/sensing.md: silver melts at 961.78 °C (ITS-90). */
class OffsetCommandTest {

  @TempDir private Path dir;

  private static Run run(String words) {
    return Run.of((Object[]) ("offset " + words).split(" "));
  }

  private static JsonNode json(int exit, String words) throws IOException {
    Run run = run(words + " --json");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(exit);
    return new ObjectMapper().readTree(run.out());
  }

  private static JsonNode json(String words) throws IOException {
    return json(0, words);
  }

  private static void refused(String sentence, String words) {
    Run run = run(words);
    assertThat(run.err()).isEqualTo(sentence + System.lineSeparator());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }

  private static void is(JsonNode node, String key, double value) {
    assertThat(node.get(key).doubleValue()).as(key).isCloseTo(value, within(1e-6));
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(each -> texts.add(each.textValue()));
    return texts;
  }

  /** The demo kiln with other lines. */
  private Path kiln(String was, String is) throws IOException {
    String text = Files.readString(Studio.kiln("anchor"));
    assertThat(text).contains(was);
    return Files.writeString(dir.resolve("mine.yaml"), text.replace(was, is));
  }

  // ---- the wire

  /** w - 961.78, (w + m + b)/2 - 961.78, m + b - 961.78 + 12 or 0.7; b = rate times lag. */
  @ParameterizedTest
  @CsvSource({
    "--melt 958..962 --in-air, 2, -3.78, -0.78, 14.22",
    "--melt 958..962 --charcoal, 2, -3.78, -0.78, 2.92",
    "--melt 960 --charcoal, 2, -1.78, -0.78, 0.92",
    "--melt 958..962 --in-air --rate 300 --lag 60, 5, -3.78, 0.72, 17.22",
    "--melt 958..962 --in-air --rate 240, 2.666667, -3.78, -0.446667, 14.886667",
    "--melt 958..962 --in-air --lag 0, 0, -3.78, -1.78, 12.22",
    "--melt 1760..1766 --charcoal --unit F, 2, -1.78, 0.886667, 4.253333",
    "--melt 1760..1766 --charcoal --unit f --rate 540 --lag 60, 5, -1.78, 2.386667, 7.253333"
  })
  void aMeltGivesItsUnevenLimits(
      String words, double behind, double low, double offset, double high) throws IOException {
    JsonNode melt = json(words).get("melt");
    is(melt, "mostBehindKelvins", behind);
    is(melt, "lowOffsetKelvins", low);
    is(melt, "offsetKelvins", offset);
    is(melt, "highOffsetKelvins", high);
    assertThat(melt.get("surroundings").textValue())
        .isEqualTo(words.contains("--in-air") ? "in-air" : "charcoal");
  }

  @Test
  void theOffsetBelongsToTheMeltAndGoesDownInProportion() throws IOException {
    JsonNode answer = json("--melt 958..962 --in-air --at 800");
    is(answer.get("work"), "trueCelsius", 800);
    is(answer.get("work"), "offsetKelvins", -0.78 * 800 / 961.78);
    assertThat(answer.get("work").get("standing").textValue()).isEqualTo("first-guess");
    JsonNode usual = json("--melt 958..962 --in-air").get("work");
    is(usual, "trueCelsius", 961.78);
    is(usual, "shownCelsius", 961.00);
    is(usual, "offsetKelvins", -0.78);
    assertThat(usual.get("standing").textValue()).isEqualTo("seen");
    assertThat(texts(answer.get("origins")))
        .contains("read: silver point 961.78 °C: ITS-90, table of fixed points");
  }

  @Test
  void thePageTellsAllOfIt() {
    assertThat(run("--melt 958..962 --in-air --kiln " + Studio.kiln("anchor")).out())
        .startsWith(
            """
            At 960 °C the display shows 0.8 K too little (possible: -3.8 to 14.2 K above the
            truth; wire bare in air).
            For work at 961.8 °C (the melt) the display must say 961 °C. That is offset-k:
            -0.8 in the kiln file; that of Anchor has 0.

              true         display      off
              500 °C       499.6 °C     -0.4 K     a first guess
              600 °C       599.5 °C     -0.5 K     a first guess
              700 °C       699.4 °C     -0.6 K     a first guess
              800 °C       799.4 °C     -0.6 K     a first guess
              900 °C       899.3 °C     -0.7 K     a first guess
              961.8 °C     961 °C       -0.8 K     the melt
              1000 °C      999.2 °C     -0.8 K     a first guess

            note  Nothing points to another couple than type K or to swapped leads.
            """)
        .contains("note  Write it into the kiln file or correct the display at the controller,")
        .contains("care  Only in a kiln that its maker allows above 970 °C, without work,")
        .contains("from  read: silver point 961.78 °C: ITS-90, table of fixed points");
  }

  @Test
  void thePageIsInFahrenheit() {
    assertThat(run("--melt 1760..1766 --charcoal --unit F --at 1450").out())
        .startsWith(
            """
            At 1763 °F the display shows 1.6 °F too much (possible: -3.2 to 7.7 °F above the
            truth; wire shielded by charcoal).
            For work at 1450 °F (a first guess) the display must say 1451.3 °F. That is
            offset-k: 0.7 in the kiln file (in K; 1.3 °F).
            """)
        .contains("  1763.2 °F    1764.8 °F    1.6 °F     the melt\n")
        .contains("Heat through 1724 to 1778 °F at 4 to 9 °F a minute")
        .doesNotContain("970 °C");
  }

  /** Whoever asks for help before the check reads what to mind. */
  @Test
  void theHelpHoldsEveryCaution() {
    String help = run("--help").out().replaceAll("\\s+", " ");
    assertThat(MeltCheck.cautions()).isNotEmpty().allMatch(help::contains);
  }

  // ---- comparisons

  /** Straight between 6 K at 500 °C and 9 K at 800 °C; the same beyond. */
  @ParameterizedTest
  @CsvSource({"750, 8.5, between", "500, 6, seen", "400, 6, first-guess", "900, 9, first-guess"})
  void comparisonsGiveALine(double at, double offset, String standing) throws IOException {
    JsonNode work = json("--compare 506=500 --compare 809=800 --at " + at).get("work");
    is(work, "offsetKelvins", offset);
    is(work, "shownCelsius", at + offset);
    assertThat(work.get("standing").textValue()).isEqualTo(standing);
  }

  @Test
  void theLastComparisonIsTheWork() throws IOException {
    is(json("--compare 809=800 --compare 506=500").get("work"), "trueCelsius", 500);
    JsonNode answer = json("--compare 1488=1472 --unit F");
    is(answer.get("work"), "trueCelsius", 800);
    is(answer.get("comparisons").get(0), "offsetKelvins", 16 / 1.8);
    assertThat(answer.get("melt").isNull()).isTrue();
    assertThat(texts(answer.get("cautions"))).anyMatch(care -> care.contains("unplugged"));
  }

  @Test
  void meltAndComparisonMakeOneLine() throws IOException {
    JsonNode answer = json("--melt 962.78 --charcoal --lag 0 --compare 503=500 --at 730.89");
    is(answer.get("work"), "offsetKelvins", 2); // half way between 3 K and 1 K
    assertThat(answer.get("work").get("standing").textValue()).isEqualTo("between");
    List<String> shows = new ArrayList<>();
    answer.get("shows").forEach(row -> shows.add(row.get("trueCelsius").asText()));
    assertThat(shows)
        .containsExactly("500", "600", "700", "730.89", "800", "900", "961.78", "1000");
  }

  /** From ice alone the same everywhere. */
  @Test
  void iceGivesAConstant() throws IOException {
    is(json("--compare 2=0 --at 800").get("work"), "offsetKelvins", 2);
    is(json("--compare -1=0 --at 800").get("work"), "offsetKelvins", -1);
  }

  // ---- a wrong type

  /** CHK-F2, cold junction at 0 °C: a type S on a display set to K. */
  @Test
  void aWrongTypeIsToldBeforeAnyOffset() throws IOException {
    String words = "--compare 166.6=750 --compare 225.2=961.78 --type K --cold-junction 0";
    JsonNode answer = json(1, words);
    assertThat(answer.get("suspects")).hasSize(1);
    assertThat(answer.get("suspects").get(0).get("type").textValue()).isEqualTo("S");
    assertThat(answer.get("suspects").get(0).get("largestMisfitKelvins").doubleValue())
        .isLessThan(0.1);
    assertThat(answer.get("work").isNull()).isTrue();
    assertThat(answer.get("shows")).isEmpty();
    is(answer, "coldJunctionCelsius", 0);
    assertThat(run(words).out())
        .contains("The controller is set to type K, the couple may be type S (explains the")
        .contains("Put that right first and read again: an offset would only hide it.")
        .doesNotContain("offset-k");
  }

  /** Terminals at 35 °C show 1.41 mV of K and 0.20 of S: some 28 K more than at 0 °C. */
  @Test
  void theTerminalsNeedNotBeKnown() throws IOException {
    JsonNode answer = json(1, "--compare 195=750 --compare 252=961.78 --type K");
    assertThat(answer.get("suspects").get(0).get("type").textValue()).isEqualTo("S");
    assertThat(answer.get("coldJunctionCelsius").isNull()).isTrue();
    JsonNode cold = json(1, "--compare 195=750 --compare 252=961.78 --type K --cold-junction 0");
    assertThat(cold.get("suspects")).isEmpty();
  }

  @Test
  void aMeltTellsRFromS() throws IOException {
    JsonNode answer = json(1, "--melt 895 --charcoal --type r");
    assertThat(answer.get("type").textValue()).isEqualTo("R");
    assertThat(answer.get("suspects").get(0).get("type").textValue()).isEqualTo("S");
    assertThat(texts(answer.get("notes")))
        .anyMatch(note -> note.startsWith("One reading is a hint"));
  }

  /** E(90) - E(25) of type K is 2.683 mV by the printed table; 1.000 less that is -1.683. */
  @Test
  void swappedLeadsAreTold() throws IOException {
    JsonNode answer = json(1, "--compare -44=90 --type K --cold-junction 25");
    assertThat(answer.get("suspects").get(0).get("leadsReversed").booleanValue()).isTrue();
    assertThat(run("--compare -47=194 --type K --unit F --cold-junction 77").out())
        .contains("The leads of the type K couple may be swapped (explains the readings to")
        .contains("°F).");
  }

  @Test
  void whatNothingExplainsIsNoOffset() throws IOException {
    JsonNode answer = json(1, "--compare 350=500 --kiln " + Studio.kiln("anchor"));
    assertThat(answer.get("suspects")).isEmpty();
    assertThat(answer.get("work").isNull()).isTrue();
    assertThat(run("--compare 350=500 --type K").out())
        .contains("More than 100 K off is no offset, and neither another couple nor swapped leads");
  }

  @Test
  void aLargeOffsetIsToldWithDoubt() throws IOException {
    assertThat(texts(json("--compare 830=800").get("notes")))
        .anyMatch(note -> note.startsWith("More than 25 K is more than wire and age"));
    assertThat(texts(json("--compare 1520=1472 --unit F").get("notes")))
        .anyMatch(note -> note.startsWith("More than 45 °F is more than"));
    assertThat(texts(json("--compare 824=800").get("notes")))
        .noneMatch(note -> note.startsWith("More than"));
  }

  // ---- the kiln's file

  @Test
  void theFilesOffsetIsComparedWithTheRightOne() throws IOException {
    Path right = kiln("offset-k: 0", "offset-k: -0.8");
    Run run = run("--melt 958..962 --in-air --kiln " + right);
    assertThat(run.out())
        .contains("-0.8 in the kiln file, as that of Anchor has it.")
        .doesNotContain("offset-changed");
    JsonNode answer =
        json("--melt 958..962 --in-air --kiln " + kiln("type: K", "type: N")); // other text
    assertThat(answer.get("type").textValue()).isEqualTo("N");
    assertThat(answer.get("kiln").get("name").textValue()).isEqualTo("Anchor");
    is(answer.get("kiln"), "offsetKelvins", 0);
  }

  @Test
  void aKilnThatMayNotGoBeyond970IsRefusedTheMelt() throws IOException {
    Path cool = kiln("max-celsius: 1100", "max-celsius: 970");
    refused(
        "--melt: kiln Anchor is allowed 970 °C at most, and a melt check leads it above 970 °C;"
            + " expected --compare, with a trusted couple beside the sensor.",
        "--melt 960 --in-air --kiln " + cool);
    assertThat(run("--compare 809=800 --kiln " + cool).code()).isZero();
    refused(
        "--at: 980 °C is more than kiln Anchor is allowed; expected at most 970 °C.",
        "--compare 809=800 --at 980 --kiln " + cool);
  }

  @Test
  void aLearnedKilnIsToBeLearnedAgain() throws IOException {
    int quantities = KilnQuantity.values().length;
    double[][] covariance = new double[quantities][quantities];
    for (int i = 0; i < quantities; i++) {
      covariance[i][i] = 0.04;
    }
    Kiln anchor = KilnFile.read(Files.readString(Studio.kiln("anchor")), "anchor.yaml");
    Learned learned =
        new Learned(
            LocalDate.of(2026, 11, 1),
            3,
            Learned.ENGINE,
            KilnBeliefs.of(new double[quantities], covariance));
    Path taught =
        Files.writeString(dir.resolve("taught.yaml"), KilnFile.write(anchor.withLearned(learned)));
    assertThat(texts(json("--compare 809=800 --kiln " + taught).get("notes")))
        .contains(
            "After that learn again: what this kiln's logs taught counted on the offset-k it has.");
  }

  // ---- what is wrong

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      textBlock =
          """
          --type K | --melt: neither this nor --compare is given; expected one of the two, or both.
          --melt 960 | --in-air: neither this nor --charcoal is given; expected what was around the wire.
          --melt 960 --in-air --charcoal | --charcoal: --in-air is given too; keep one of the two.
          --compare 9=8 --in-air | --in-air: given without --melt, to which it belongs; add it or leave this out.
          --compare 9=8 --charcoal | --charcoal: given without --melt, to which it belongs; add it or leave this out.
          --compare 9=8 --rate 180 | --rate: given without --melt, to which it belongs; add it or leave this out.
          --compare 9=8 --lag 40 | --lag: given without --melt, to which it belongs; add it or leave this out.
          --melt 962..958 --in-air | --melt: "962..958" has the wire melted at a lower reading than it was last whole; expected the lower one first, heated slowly and never back.
          --melt 850..860 --in-air | --melt: "850..860" is more than 100 K off 961.8 °C, where silver melts: that is no offset; check the type setting, the leads, --unit and where the tip is.
          --melt 960..1070 --in-air | --melt: "960..1070" is more than 100 K off 961.8 °C, where silver melts: that is no offset; check the type setting, the leads, --unit and where the tip is.
          --melt 960 --in-air --unit F | --melt: "960" is more than 180 °F off 1763.2 °F, where silver melts: that is no offset; check the type setting, the leads, --unit and where the tip is.
          --melt 960.. --in-air | --melt: "960.." is no reading; expected what the display said at the last look at a whole wire and the first at a melted one, such as 958..962, or one number for both.
          --melt 958..960..962 --in-air | --melt: "958..960..962" is no reading; expected what the display said at the last look at a whole wire and the first at a melted one, such as 958..962, or one number for both.
          --melt NaN --in-air --unit F | --melt: "NaN" is no reading; expected what the display said at the last look at a whole wire and the first at a melted one, such as 1757..1763, or one number for both.
          --melt 960 --in-air --rate 3 | --rate: "3" is not possible; expected 20 to 1200 K/h (3 K a minute is 180).
          --melt 1760 --in-air --unit F --rate 5 | --rate: "5" is not possible; expected 36 to 2160 °F/h (5.4 °F a minute is 324).
          --melt 960 --in-air --lag -1 | --lag: "-1" is not possible; expected 0 to 600 seconds.
          --compare 809 | --compare: "809" is no comparison; expected what the display showed, = and what the trusted thermometer said, such as 809=800.
          --compare 809=x | --compare: "809=x" is no comparison; expected what the display showed, = and what the trusted thermometer said, such as 809=800.
          --compare 809=800=790 | --compare: "809=800=790" is no comparison; expected what the display showed, = and what the trusted thermometer said, such as 809=800.
          --compare 809=80000 --unit F | --compare: "80000" is not possible; expected -58 to 3272 °F.
          --compare 350=500 | --compare: 350 °C shown at 500 °C is more than 100 K off, which is no offset; give --type, the couple that the controller is set to, to look for a wrong type or swapped leads, and check --unit and where the tip is.
          --compare 506=500 --compare 506=503 | --compare: 506 °C shown at 500 °C and 506 °C shown at 503 °C cannot both be: the display must rise with the truth; expected one reading for each temperature.
          --compare 506=500 --compare 520=500 | --compare: 506 °C shown at 500 °C and 520 °C shown at 500 °C cannot both be: the display must rise with the truth; expected one reading for each temperature.
          --compare 809=800 --type X | --type: "X" is not known; expected B, E, J, K, N, R, S or T.
          --compare 809=800 --cold-junction 25 | --cold-junction: it counts only for a couple; give --type or --kiln too, or leave this out.
          --compare 809=800 --type K --cold-junction 200 | --cold-junction: "200" is not possible; expected 0 to 70 °C.
          --compare 809=800 --unit X | --unit: "X" is not known; expected C or F.
          --compare 809=800 --at 5000 | --at: "5000" is not possible; expected -50 to 1800 °C.
          """)
  void whatIsWrongIsToldInOneSentence(String words, String sentence) {
    refused(sentence, words);
  }

  @Test
  void aTypeBesidesTheFilesIsRefused() {
    refused(
        "--type: the kiln file names the type too (K); keep one of --type and --kiln.",
        "--compare 809=800 --type K --kiln " + Studio.kiln("anchor"));
    Run missing = run("--compare 809=800 --kiln nowhere.yaml");
    assertThat(missing.code()).isEqualTo(2);
    assertThat(missing.err().lines()).hasSize(1);
  }
}
