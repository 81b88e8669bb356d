package org.heatwright.client;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.heatwright.client.api.BookApi;
import org.heatwright.client.api.CommandsApi;
import org.heatwright.client.api.ShelfApi;
import org.heatwright.client.model.CardRequest;
import org.heatwright.client.model.ComposeAnswer;
import org.heatwright.client.model.ComposeRequest;
import org.heatwright.client.model.Forecast;
import org.heatwright.client.model.ForecastRequest;
import org.heatwright.client.model.GivenFile;
import org.heatwright.client.model.InspectAnswer;
import org.heatwright.client.model.InspectRequest;
import org.heatwright.client.model.Keying;
import org.heatwright.client.model.KeyingRequest;
import org.heatwright.client.model.QuestionsQuestion;
import org.heatwright.client.model.ReadbackAnswer;
import org.heatwright.client.model.ReadbackRequest;
import org.heatwright.client.model.ShelfEntry;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A client that a general-purpose generator makes of {@code docs/openapi.json} walks from the work
 * to a proven program and a card, against the program as it is delivered, in a process of its own.
 */
class ChainIT {

  private static final Path PROGRAM = Path.of("..", "app", "target", "heatwright.jar");
  private static final int SLOT = 2;

  private static Process demo;
  private static ApiClient client;

  @BeforeAll
  static void start() throws IOException {
    demo =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElse("java"),
                "-jar",
                PROGRAM.toString(),
                "demo",
                "--port",
                "0",
                "--json")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    StringBuilder said = new StringBuilder();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(demo.getInputStream(), StandardCharsets.UTF_8));
    String line = "";
    while (line != null && !line.equals("}")) {
      line = out.readLine();
      said.append(line);
    }
    client = new ApiClient();
    String address = new ObjectMapper().readTree(said.toString()).path("address").asText();
    client.updateBaseUri(address.replaceFirst("/$", ""));
  }

  @AfterAll
  static void stop() throws InterruptedException {
    demo.destroy();
    demo.waitFor(10, TimeUnit.SECONDS);
  }

  @Test
  void theChainIsWalked() throws ApiException {
    assertThat(new ShelfApi(client).shelf().getEntries().stream().map(ShelfEntry::getName))
        .contains("Harbour burnout", "Capstan", "Tern");
    GivenFile work = new GivenFile().shelf("Harbour burnout");
    GivenFile kiln = new GivenFile().shelf("Capstan");
    GivenFile keypad = new GivenFile().shelf("Tern");
    CommandsApi commands = new CommandsApi(client);

    ComposeAnswer composed =
        commands.compose(
            new ComposeRequest().work(work).kiln(kiln).keypad(keypad).output("burnout.yaml"));
    assertThat(composed.getExit()).isEqualTo(ComposeAnswer.ExitEnum.NUMBER_0);
    assertThat(composed.getAnswer().getReasons()).isNotEmpty();
    String yaml = composed.getFiles().get(0).getText();
    GivenFile schedule = new GivenFile().name("burnout.yaml").text(yaml);

    InspectAnswer inspected =
        commands.inspect(
            new InspectRequest().schedule(schedule).kiln(kiln).keypad(keypad).work(work));
    assertThat(inspected.getExit()).isEqualTo(InspectAnswer.ExitEnum.NUMBER_0);

    Forecast forecast =
        commands
            .forecast(new ForecastRequest().schedule(schedule).kiln(kiln).work(work))
            .getAnswer();
    assertThat(forecast.getEndSeconds().getLow()).isLessThan(forecast.getEndSeconds().getMedian());
    assertThat(forecast.getEndSeconds().getMedian()).isLessThan(forecast.getEndSeconds().getHigh());

    Keying keying =
        commands
            .keying(new KeyingRequest().schedule(schedule).keypad(keypad).slot(SLOT))
            .getAnswer();
    assertThat(keying.getFits()).isTrue();
    assertThat(keying.getSteps()).isNotEmpty();

    List<QuestionsQuestion> questions =
        commands
            .readback(new ReadbackRequest().schedule(schedule).keypad(keypad).questions(true))
            .getQuestions()
            .getQuestions();
    ReadbackRequest readback =
        new ReadbackRequest()
            .schedule(schedule)
            .keypad(keypad)
            .slot(SLOT)
            .displayReads(new BigDecimal(19))
            .thermometer("20C")
            .unheatedOvernight(true);
    ReadbackAnswer proven = commands.readback(readback.shown(shown(questions, keying, "")));
    assertThat(proven.getAnswer().getOutcome()).isEqualTo("proven");
    ReadbackAnswer slip = commands.readback(readback.shown(shown(questions, keying, "1")));
    assertThat(slip.getExit()).isEqualTo(ReadbackAnswer.ExitEnum.NUMBER_1);
    assertThat(slip.getAnswer().getOutcome()).isEqualTo("not-proven");

    byte[] card =
        Base64.getDecoder()
            .decode(
                commands
                    .card(
                        new CardRequest()
                            .schedule(schedule)
                            .kiln(kiln)
                            .keypad(keypad)
                            .work(work)
                            .slot(SLOT)
                            .output("card.pdf"))
                    .getFiles()
                    .get(0)
                    .getBase64());
    assertThat(new String(card, StandardCharsets.ISO_8859_1)).startsWith("%PDF-");

    assertThat(new BookApi(client).firings().getFirings()).isEmpty();
  }

  @Test
  void whatIsWrongComesAsASentence() {
    assertThatThrownBy(
            () ->
                new CommandsApi(client)
                    .inspect(new InspectRequest().schedule(new GivenFile().text("segments: 1"))))
        .isInstanceOfSatisfying(
            ApiException.class,
            e -> {
              assertThat(e.getCode()).isEqualTo(422);
              assertThat(e.getResponseBody()).contains("schedule.yaml");
            });
  }

  /** What the review shows to somebody who keyed the sheet's digits, and after the first value. */
  private static GivenFile shown(List<QuestionsQuestion> questions, Keying keying, String slip) {
    Map<String, String> digits = new HashMap<>();
    keying.getValues().forEach(v -> digits.put(v.getSegment() + " " + v.getKind(), v.getDigits()));
    StringBuilder yaml = new StringBuilder("slot: %d\nshown:\n".formatted(SLOT));
    String added = slip;
    for (QuestionsQuestion question : questions) {
      String text = answer(question.getWords(), digits);
      if (!added.isEmpty() && text.matches("\\d+")) {
        text += added;
        added = "";
      }
      yaml.append("  - [%d, \"%s\"]\n".formatted(question.getPosition(), text));
    }
    return new GivenFile().name("shown.yaml").text(yaml.toString());
  }

  private static String answer(String words, Map<String, String> digits) {
    String[] parts = words.split("[ ,]+");
    if (words.equals("start delay")) {
      return digits.get("0 delay");
    }
    if (words.endsWith("first value")) {
      return digits.get(parts[1] + " end");
    }
    return digits.get(parts[1] + " " + parts[2]);
  }
}
