package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected numbers were computed apart (implementers' sheet CHK-G1 to G4) or by hand. */
class CastCommandTest {

  private static Run cast(String words) {
    List<Object> args = new ArrayList<>(List.of("cast"));
    args.addAll(List.of(words.split(" ")));
    return Run.of(args.toArray());
  }

  private static JsonNode json(String words) throws JsonProcessingException {
    Run run = cast(words + " --json");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return new ObjectMapper().readTree(run.out());
  }

  private static void refused(String sentence, String words) {
    Run run = cast(words);
    assertThat(run.err()).isEqualTo(sentence + System.lineSeparator());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void metalForWaxAndForResin() throws JsonProcessingException {
    JsonNode wax = json("metal --alloy sterling-925 --wax-g 5");
    assertThat(wax.at("/totalGrams/usual").doubleValue()).isCloseTo(59.97895, within(1e-5));
    assertThat(wax.at("/totalGrams/low").doubleValue()).isLessThan(57);
    assertThat(wax.at("/totalGrams/high").doubleValue()).isGreaterThan(65);
    JsonNode resin = json("metal --alloy sterling --resin-g 0.56 --button-percent 0");
    assertThat(resin.at("/totalGrams/usual").doubleValue()).isCloseTo(5.32257, within(1e-5));
    JsonNode rule =
        json("metal --density-g-cm3 10.36 --wax-g 5 --pattern-density-g-cm3 1 --button-percent 10");
    assertThat(rule.at("/totalGrams/usual").doubleValue()).isCloseTo(56.98, within(1e-9));
    assertThat(rule.at("/totalGrams/low")).isEqualTo(rule.at("/totalGrams/high"));
  }

  @Test
  void theDensityOfOnesOwnWinsAndTheOthersStayBesideIt() throws JsonProcessingException {
    JsonNode mix = json("metal --mix Au=583,Ag=104,Cu=313 --volume-cm3 1 --button-percent 0");
    assertThat(mix.at("/totalGrams/usual").doubleValue()).isCloseTo(13.32921, within(1e-5));
    JsonNode own =
        json("metal --alloy 14k --density-g-cm3 13 --volume-mm3 1000 --button-percent 0");
    assertThat(own.at("/totalGrams/usual").doubleValue()).isEqualTo(13);
    assertThat(own.at("/densities/0/how").asText()).isEqualTo("your own value");
    assertThat(own.get("densities")).hasSize(3);
    assertThat(json("metal --alloy 14k --volume-cm3 1").get("densities")).hasSize(2);
  }

  @Test
  void powderForOneMouldAndForSeveral() throws JsonProcessingException {
    JsonNode one = json("powder --diameter-mm 75 --height-mm 100 --wax-g 20");
    assertThat(one.at("/powderGrams/usual").doubleValue()).isCloseTo(554.70, within(0.005001));
    assertThat(one.at("/waterGrams/usual").doubleValue()).isCloseTo(221.88, within(0.005001));
    assertThat(one.at("/weigh/powderGrams").doubleValue()).isEqualTo(555);
    assertThat(one.at("/weigh/waterGrams").doubleValue()).isEqualTo(222);
    JsonNode three =
        json(
            "powder --diameter-mm 75 --height-mm 100 --diameter-mm 75 --height-mm 100 --wax-g 20"
                + " --count 2 --scale-g 5");
    assertThat(three.at("/powderGrams/usual").doubleValue())
        .isCloseTo(581.07 + 2 * 554.70, within(0.015));
    assertThat(three.at("/weigh/powderGrams").doubleValue()).isEqualTo(1695);
  }

  @Test
  void finenessDownAndUpAndMixed() throws JsonProcessingException {
    assertThat(
            json("fineness --metal-g 100 --fineness 18k --to 585").at("/add/grams").doubleValue())
        .isCloseTo(28.20513, within(1e-5));
    assertThat(
            json("fineness --metal-g 100 --fineness 585 --to 750").at("/add/grams").doubleValue())
        .isCloseTo(66, within(1e-6));
    JsonNode karats = json("fineness --metal-g 100 --fineness 18k --to 14k");
    assertThat(karats.at("/add/grams").doubleValue()).isCloseTo(28.57143, within(1e-5));
    assertThat(karats.at("/notes/0").asText()).contains("585").contains("28.21 g");
    JsonNode mixed =
        json(
            "fineness --metal-g 30 --fineness 750 --metal-g 10 --fineness 0.585 --metal-g 10"
                + " --fineness 375");
    assertThat(mixed.at("/together/fineness").doubleValue()).isCloseTo(642, within(1e-6));
    assertThat(mixed.get("add").isNull()).isTrue();
    JsonNode units = json("fineness --fineness 18k --metal-g 31 --fineness 14k --metal-dwt 4");
    assertThat(units.at("/together/grams").doubleValue())
        .isCloseTo(31 + 4 * 1.55517384, within(5e-7));
    assertThat(json("fineness --metal-dwt 20 --fineness 925").at("/together/grams").doubleValue())
        .isCloseTo(31.1034768, within(1e-6));
  }

  @Test
  void sizes() throws JsonProcessingException {
    JsonNode size = json("size --wanted-mm 100 --shrinkage-percent 1.5");
    assertThat(size.at("/patternMillimetres/usual").doubleValue())
        .isCloseTo(101.52284, within(1e-5));
    assertThat(cast("size --wanted-mm 18.2").out())
        .startsWith("For 18.2 mm in metal make the pattern 18.48 mm (18.38 to 18.57).\n");
    assertThat(cast("size --pattern-mm 20").out())
        .startsWith("A pattern of 20 mm comes out at 19.7 mm (19.6 to 19.8).\n");
  }

  @Test
  void aPourShowsTheOwnValueFirstAndEverySource() throws JsonProcessingException {
    JsonNode pour = json("pour --alloy sterling --thinnest-mm 1.2 --my-mould 520");
    assertThat(pour.at("/mould/celsius").doubleValue()).isEqualTo(520);
    assertThat(pour.at("/mould/own").booleanValue()).isTrue();
    assertThat(pour.at("/mould/sources/0/about").asText()).isEqualTo("your own value");
    assertThat(pour.at("/mould/sources").size()).isGreaterThan(4);
    assertThat(pour.at("/section").asText()).isEqualTo("light");
    JsonNode fahrenheit = json("pour --alloy sterling --my-mould 968 --unit F");
    assertThat(fahrenheit.at("/mould/celsius").doubleValue()).isEqualTo(520);
    assertThat(cast("pour --alloy sterling --my-mould 968 --unit F").out())
        .contains("Mould: 968 °F;")
        .contains("quench");
    assertThat(json("pour --alloy 9k").get("metal").isNull()).isTrue();
    assertThat(json("pour --alloy 9k --liquidus 890").at("/superheatKelvins/low").doubleValue())
        .isEqualTo(50);
  }

  /** The demo's platinum: a work file says alloy, binder and the rest. */
  @Test
  void everyTextOfAPourFollowsTheUnit() {
    String page =
        Run.of("cast", "pour", "--alloy", "14k-yellow-gold", "--thinnest-mm", "1.2", "--unit", "F")
            .out();
    assertThat(page)
        .contains("1254 °F", "mould about 360 °F under melting", "from 896 °F")
        .doesNotContain("°C")
        .doesNotContainPattern("\\d K\\b");
  }

  @Test
  void aPourTakesFromTheWorkFileWhatIsNotSaid() throws JsonProcessingException {
    String works = "src/main/resources/demo/works/";
    JsonNode harbour = json("pour --work " + works + "harbour-burnout.yaml --thinnest-mm 1.2");
    assertThat(harbour.at("/alloy").asText()).isEqualTo("sterling-925");
    assertThat(harbour.at("/mould/celsius").doubleValue()).isEqualTo(500);
    assertThat(harbour.at("/section").asText()).isEqualTo("light");
    assertThat(json("pour --work " + works + "platinum-pair.yaml").at("/alloy").asText())
        .isEqualTo("platinum-950");
    refused("--alloy: not given; expected one such as sterling-925.", "pour");
    refused(
        works + "evening-enamel.yaml: nothing is poured here; expected a burnout.",
        "pour --work " + works + "evening-enamel.yaml");
  }

  @Test
  void theOrderGoesDown() throws JsonProcessingException {
    String moulds = "order --mould signet --wants 450 --count 2 --mould lace --wants 630 --count 3";
    JsonNode order = json(moulds + " --kiln-now 730 --fall-per-hour 120");
    assertThat(order.at("/steps/0/name").asText()).isEqualTo("lace");
    // By hand: 100 K in 50 min, an hour to settle.
    assertThat(order.at("/steps/0/readyMinutes").doubleValue()).isCloseTo(110, within(1e-6));
    assertThat(order.at("/compromise/celsius").doubleValue()).isEqualTo(540);
    refused(
        "--rise-per-hour: not given, but the kiln must go up from 600 °C to 630 °C; expected how fast"
            + " it does.",
        moulds + " --kiln-now 600 --fall-per-hour 120");
  }

  /** The closed kiln falls no faster than the program asks, and cores settle after the chamber. */
  @Test
  void withAKilnAndItsBurnoutTheWaitsAreForecast() throws JsonProcessingException {
    String kiln =
        " --kiln %s --work %s".formatted(Studio.kiln("capstan"), Studio.work("harbour-burnout"));
    String moulds = "order --mould signet --wants 450 --mould lace --wants 630";
    JsonNode free = json(moulds + kiln);
    JsonNode slow = json(moulds + kiln + " --fall-per-hour 100");
    assertThat(slow.at("/steps/0/kilnMinutes").doubleValue()).isBetween(55.0, 70.0);
    assertThat(slow.at("/steps/1/kilnMinutes").doubleValue()).isBetween(100.0, 125.0);
    for (int step = 0; step < 2; step++) {
      assertThat(free.at("/steps/%d/kilnMinutes".formatted(step)).doubleValue())
          .isLessThan(slow.at("/steps/%d/kilnMinutes".formatted(step)).doubleValue());
      assertThat(free.at("/steps/%d/settleMinutes".formatted(step)).doubleValue())
          .isBetween(20.0, 120.0);
    }
    refused(
        "--settle-minutes: given besides --kiln, which forecasts that; keep one of the two.",
        moulds + kiln + " --settle-minutes 30");
    refused(
        "--work: not given, but --kiln is; a forecast needs both.",
        moulds + " --kiln " + Studio.kiln("capstan"));
    refused("--kiln-now: not given; expected it, or --kiln and --work for a forecast.", moulds);
  }

  @Test
  void whatIsWrongIsToldInOneSentence() {
    refused(
        "--wax-g: not given; expected one of --wax-g, --resin-g, --volume-cm3, --volume-mm3.",
        "metal --alloy sterling");
    refused(
        "--resin-g: --wax-g is given too; keep one of the two.",
        "metal --alloy sterling --wax-g 3 --resin-g 4");
    refused(
        "--wax-g: \"-3\" is not possible; expected a number above zero.",
        "metal --alloy sterling --wax-g -3");
    refused(
        "--alloy: not given; expected one of --alloy, --mix, --density-g-cm3.", "metal --wax-g 3");
    refused(
        "--density-g-cm3: The density (15400.0 g/cm³) must be 0.5 to 25 g/cm³.",
        "metal --density-g-cm3 15400 --wax-g 3");
    refused(
        "--mix: \"Xx=3\" is no part of a mix; expected metals of Au, Ag, Cu, Zn, Sn, Ni, Pd, Pt with"
            + " their parts, e.g. Au=750,Ag=125,Cu=125.",
        "metal --mix Au=3,Xx=3 --wax-g 3");
    refused(
        "--method: \"spoon\" is not known; expected vacuum, centrifugal or gravity.",
        "metal --alloy sterling --wax-g 3 --method spoon");
    refused(
        "--water-powder: \"40\" is not possible; expected 0.2 to 0.8, 0.40 meaning 40 g to 100 g.",
        "powder --diameter-mm 75 --height-mm 100 --water-powder 40");
    refused(
        "--wax-g: The pattern (1053 cm³) must be smaller than its mould (441.8 cm³).",
        "powder --diameter-mm 75 --height-mm 100 --wax-g 1000");
    refused(
        "--fineness: \"18\" may be karats or percent; expected such as 18k, 750 or 0.75.",
        "fineness --metal-g 3 --fineness 18");
    refused(
        "--fineness: two masses are given for one lot; expected each lot to begin with --fineness and"
            + " to have one mass.",
        "fineness --metal-g 31 --fineness 18k --metal-dwt 4 --fineness 14k");
    refused(
        "--adding: No amount of 700 brings 585 to 750; it takes something finer than that.",
        "fineness --metal-g 3 --fineness 585 --to 750 --adding 700");
    refused(
        "--binder: platinum is too hot for a gypsum-bonded mould; it takes a phosphate-bonded one.",
        "pour --alloy platinum --binder gypsum");
    refused(
        "--my-mould: \"5000\" is not possible; expected 20 to 2000 °C.",
        "pour --alloy sterling --my-mould 5000");
    refused(
        "--accept-degrees: \"1000\" is not possible; expected 0 to 300.",
        "order --mould a --wants 600 --kiln-now 700 --fall-per-hour 90 --accept-degrees 1000");
    refused("--unit: \"K\" is not known; expected C or F.", "pour --alloy sterling --unit K");
    assertThat(cast("metal --alloy pewter --wax-g 3").err())
        .startsWith("--alloy: \"pewter\" is not known; expected one of sterling-925, ");
    refused(
        "--count: \"0\" is not possible; expected 1 to 200.",
        "powder --diameter-mm 75 --height-mm 100 --count 0");
    refused(
        "--wall-mm: \"-1\" is not possible; expected zero or more, under a quarter of the diameter.",
        "powder --diameter-mm 75 --height-mm 100 --wall-mm -1");
    refused(
        "--to: No addition brings 750 to 1000; only refining does.",
        "fineness --metal-g 10 --fineness 750 --to 1");
    assertThat(cast("powder --height-mm 100").err())
        .startsWith("Missing required argument(s): --diameter-mm=D.");
    assertThat(Run.of("cast").err()).startsWith("Missing required subcommand.");
  }

  @Test
  void noPageIsWiderThan80Columns() {
    for (String words :
        List.of(
            "metal --alloy 14k-white-gold --resin-g 2.1 --method gravity --without-sprues",
            "powder --diameter-mm 90 --height-mm 150 --count 3 --wax-g 14",
            "fineness --metal-ozt 1 --fineness 18k --to 14k",
            "size --wanted-mm 18.2",
            "pour --alloy 18k-white-gold --thinnest-mm 0.7 --unit F --my-mould 1250",
            "order --mould a --wants 630 --mould b --wants 450 --kiln-now 730 --fall-per-hour 90")) {
      Run run = cast(words);
      assertThat(run.err()).isEmpty();
      assertThat(run.out().lines()).as(words).allMatch(line -> line.length() <= 80);
    }
  }
}
