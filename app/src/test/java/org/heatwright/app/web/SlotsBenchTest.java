package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.SlotEntry;
import org.heatwright.forecast.ForecastRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The slot register through the bench. */
class SlotsBenchTest extends BenchCase {

  private static final Instant NOW = Instant.parse("2026-12-02T15:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  private static final String TERN = "kiln=Capstan&keypad=Tern";

  @BeforeEach
  void open() {
    openStudio(CLOCK, DemoStudio.OPENING);
  }

  private Firing firing() {
    return new FiringPlanner(store, CLOCK)
        .plan(Choices.of(DemoStudio.OPENING), ForecastRequest.USUAL_DRAWS)
        .firing()
        .orElseThrow();
  }

  @Test
  void everySlotIsThereAndNothingIsKnownAtFirst() throws Exception {
    String page = asked.get("slots?" + TERN).body();
    assertThat(page)
        .contains("Slots of Capstan, on Tern", "id=\"slot1\"", "id=\"slot4\"")
        .contains("Nobody has told what it holds", "A proof is good for 30 days")
        .doesNotContain("id=\"slot5\"", "style=\"", "onclick", "http://", "✓");
    assertThat(asked.get("slots").statusCode()).isEqualTo(200);
    assertThat(asked.get("slots?kiln=Dinghy").statusCode()).isEqualTo(404);
    assertThat(asked.get("plan?" + TERN).body())
        .contains("What slot 1 holds is not known, and keying overwrites it", "/slots?kiln=Capstan")
        .contains("Of a hundred programs with", "An estimate, not a promise");
  }

  @Test
  void aRightReadBackIsKeptWithItsSlotUntilSomethingHappens() throws Exception {
    Firing firing = firing();
    String answer =
        asked.post("readback?plan=" + firing.choices().sealed(), Readings.right(firing)).body();
    assertThat(answer).contains("Keyed as planned", "Kept with slot 3: Proven", "today.");
    // The same answer again is not told twice.
    asked.post("readback?plan=" + firing.choices().sealed(), Readings.right(firing));
    assertThat(store.slotsTold("Capstan", "Tern"))
        .extracting(SlotEntry::kind)
        .containsExactly("read-back");

    String page = asked.get("slots?" + TERN).body();
    assertThat(page)
        .contains("class=\"slot good\"", "Proven", "by the student", "In °C: a cold kiln")
        .contains("Harbour burnout", "segment 1 target");
    // The next plan for the slot is told, and starts from what is there.
    String keying = asked.get("plan?" + firing.choices().query()).body();
    assertThat(keying)
        .contains("Slot 3 already holds this program", "Nothing needs keying")
        .contains("The steps start from what the register says is in slot 3")
        .doesNotContain("t1 (segment 1 target)"); // no value is keyed again
    // The opening shows enamel in the same slot: it would overwrite the burnout.
    assertThat(asked.get("plan?work=Evening+enamel&" + TERN + "&slot=3").body())
        .contains("Slot 3 holds “Harbour burnout");

    assertThat(
            asked
                .post("slots/tell?" + TERN, Map.of("event", "power-cut", "role", "maker"))
                .statusCode())
        .isEqualTo(302);
    assertThat(asked.get("slots?" + TERN).body())
        .contains("class=\"slot expired\"", "expired: the power was cut, told 2 Dec 2026")
        .contains("maker: the power was cut")
        .doesNotContain("class=\"slot good\"");
    assertThat(asked.get("plan?" + firing.choices().query()).body())
        .contains("Slot 3 held this program", "t1 (segment 1 target)")
        .doesNotContain("The steps start from what the register says");
  }

  @Test
  void aWrongReadBackEndsAProofAndOneOfAnotherSlotOrOfNobodyIsNotKept() throws Exception {
    Firing firing = firing();
    String address = "readback?plan=" + firing.choices().sealed();
    Map<String, String> typed = Readings.right(firing);
    typed.put("role", "");
    assertThat(asked.post(address, typed).body())
        .contains("Keyed as planned")
        .doesNotContain("Kept with");
    typed.put("role", "maker");
    typed.put("shown-slot", "2");
    assertThat(asked.post(address, typed).body()).doesNotContain("Kept with");
    typed.put("shown-slot", "3");
    typed.remove("shown2");
    typed.remove("shown3");
    typed.remove("shown4");
    typed.remove("shown5");
    assertThat(asked.post(address, typed).body())
        .contains("Not compared yet")
        .doesNotContain("Kept with");
    assertThat(store.slotsTold("Capstan", "Tern")).isEmpty();

    asked.post(address, Readings.right(firing));
    Map<String, String> wrong = Readings.right(firing);
    wrong.put("shown3", "999");
    assertThat(asked.post(address, wrong).body())
        .contains("Kept with slot 3: Proof of 2 Dec 2026 expired: a later read-back showed");
  }

  @Test
  void whoSaysThatItIsKeyedGoesOnToTheReadBackAndIsNotBelieved() throws Exception {
    Firing firing = firing();
    HttpResponse<String> answer =
        asked.post("slots/keyed?plan=" + firing.choices().sealed(), Map.of("role", "maker"));
    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(answer.headers().firstValue("Location").orElseThrow()).startsWith("/readback?plan=");
    assertThat(asked.get("slots?" + TERN).body())
        .contains("class=\"slot never\"", "keyed 2 Dec 2026 by the maker", "Never proven.");
    assertThat(
            asked
                .post("slots/keyed?plan=" + firing.choices().sealed(), Map.of("role", "Anna"))
                .statusCode())
        .isEqualTo(400);
  }

  @Test
  void aNeedIsToldBeforeTheSlotIsKeyed() throws Exception {
    Map<String, String> need =
        Map.of(
            "event",
            "needed",
            "role",
            "teacher",
            "slot",
            "3",
            "what",
            "<i>Thursday class</i>",
            "until",
            "2026-12-10");
    assertThat(asked.post("slots/tell?" + TERN, need).statusCode()).isEqualTo(302);
    assertThat(asked.get("plan?" + TERN + "&slot=3").body())
        .contains("Slot 3 is needed until 10 Dec 2026", "do not overwrite")
        .contains("&lt;i&gt;Thursday class")
        .doesNotContain("<i>Thursday");
    asked.post("slots/tell?" + TERN, Map.of("event", "released", "role", "teacher", "slot", "3"));
    assertThat(asked.get("plan?" + TERN + "&slot=3").body()).doesNotContain("do not overwrite");
    assertThat(asked.get("slots?" + TERN).body()).contains("teacher: no longer needed");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "edited      | 7 | maker | ''    | ''         | ''  | Tern has program slots 1 to 4",
        "edited      | x | maker | ''    | ''         | ''  | Tern has program slots 1 to 4",
        "edited      | 1 | Anna  | ''    | ''         | ''  | Choose who tells it: a role",
        "needed      | 1 | maker | ''    | ''         | ''  | What is the program needed for?",
        "needed      | 1 | maker | class | tomorrow   | ''  | “tomorrow” is no date",
        "rules       | 1 | maker | ''    | ''         | 400 | good for 1 to 366 days, not 400",
        "rules       | 1 | maker | ''    | ''         | ten | good for 1 to 366 days",
        "nonsense    | 1 | maker | ''    | ''         | ''  | What happened?",
      })
  void whatCannotBeToldIsRefusedInASentence(
      String event, String slot, String role, String what, String until, String days, String told)
      throws Exception {
    HttpResponse<String> answer =
        asked.post(
            "slots/tell?" + TERN,
            Map.of(
                "event", event, "slot", slot, "role", role, "what", what, "until", until, "days",
                days));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains(told);
    assertThat(store.slotsTold("Capstan", "Tern")).isEmpty();
  }

  @Test
  void theRulesOfAKeypadCanBeSet() throws Exception {
    Map<String, String> rules =
        Map.of("event", "rules", "role", "technician", "days", "7", "keeps", "on");
    assertThat(asked.post("slots/tell?" + TERN, rules).statusCode()).isEqualTo(302);
    assertThat(asked.get("slots?" + TERN).body())
        .contains("good for 7 days; this keypad is told to keep its programs");
    Firing firing = firing();
    asked.post("readback?plan=" + firing.choices().sealed(), Readings.right(firing));
    asked.post("slots/tell?" + TERN, Map.of("event", "power-cut", "role", "maker"));
    assertThat(asked.get("slots?" + TERN).body()).contains("class=\"slot good\"");
    try (Bench later =
        Bench.start(
            new BenchSettings(store, Clock.offset(CLOCK, Duration.ofDays(8)), OptionalInt.of(0)))) {
      String page = new AskedBench(later).get("slots?" + TERN).body();
      assertThat(page).contains("expired: it is too old.");
    }
  }

  @Test
  void aSlotThatNobodyKnowsIsReadAndTold() throws Exception {
    String form = asked.get("slots/read?" + TERN + "&slot=2").body();
    assertThat(form)
        .contains("What is in slot 2 of Capstan?", "t1, segment 1 target", "It is no proof");
    Map<String, String> typed = new LinkedHashMap<>();
    typed.put("role", "technician");
    typed.put("name", "Old class program");
    typed.put("shown-sign", "C");
    String[] shown = {"0.00", "100", "150", "2.00", "FULL", "732", "2.30", "End"};
    for (int i = 0; i < shown.length; i++) {
      typed.put("shown" + (i + 1), shown[i]);
    }
    assertThat(asked.post("slots/read?" + TERN + "&slot=2", typed).statusCode()).isEqualTo(302);
    assertThat(asked.get("slots?" + TERN).body())
        .contains("Old class program", "2 segments, top 732 °C", "read once, without a plan,")
        .contains("Never proven.");
    typed.put("shown4", "2.75");
    HttpResponse<String> wrong = asked.post("slots/read?" + TERN + "&slot=2", typed);
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("“2.75” means nothing certain there", "value=\"2.75\"");
    typed.put("shown-sign", "");
    assertThat(asked.post("slots/read?" + TERN + "&slot=2", typed).body())
        .contains("Say in which unit the keypad is");
    assertThat(asked.get("slots/read?" + TERN + "&slot=5").statusCode()).isEqualTo(404);
  }

  @Test
  void theRegisterIsPrintedOnBothPapers() throws Exception {
    for (String paper : new String[] {"a4", "letter"}) {
      HttpResponse<String> pdf = asked.get("slots/register.pdf?" + TERN + "&paper=" + paper);
      assertThat(pdf.statusCode()).isEqualTo(200);
      assertThat(pdf.headers().firstValue("Content-Type")).contains("application/pdf");
      assertThat(pdf.body()).startsWith("%PDF");
    }
  }
}
