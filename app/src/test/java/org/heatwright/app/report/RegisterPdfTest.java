package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RegisterPdfTest {

  private static final Instant THEN = Instant.parse("2026-11-26T09:00:00Z");
  private static final Instant NOW = Instant.parse("2026-12-02T15:00:00Z");
  private static final TemperatureUnit C = TemperatureUnit.CELSIUS;

  private static Keypad gull(int slots) throws IOException {
    String text = Files.readString(Path.of("src/main/resources/demo/keypads/gull.yaml"));
    return KeypadFile.read(text.replace("slots: 9", "slots: " + slots), "gull");
  }

  private static Schedule program(String name, Ramp ramp) {
    return Schedule.of(
        name,
        C,
        List.of(
            new Segment(Ramp.at(C.rate(120)), C.temperature(150), Duration.ofMinutes(120)),
            new Segment(ramp, C.temperature(732), Duration.ofMinutes(90))));
  }

  /** One slot of every kind. */
  private static List<SlotEvent> events(Keypad keypad) {
    Schedule proven = program("Harbour burnout", Ramp.at(C.rate(150)));
    Shown shown =
        new Shown(
            OptionalInt.of(2),
            Optional.empty(),
            List.of("2", "150", "120", "120", "732", "150", "90", "00:00").stream()
                .map(t -> t)
                .collect(
                    ArrayList::new,
                    (list, t) -> list.add(new Shown.Value(String.valueOf(list.size() + 1), t)),
                    ArrayList::addAll));
    return List.of(
        new SlotEvent.ReadBack(
            THEN, Role.MAKER, new Evidence(proven, keypad, 2, shown, Optional.empty())),
        new SlotEvent.Protected(
            THEN,
            Role.TEACHER,
            2,
            "the Thursday class, two moulds of thirty pieces each, and the sample pieces for the"
                + " window",
            Optional.of(LocalDate.of(2026, 12, 10))),
        new SlotEvent.Keyed(THEN, Role.STUDENT, 3, program("Working heat", Ramp.fastest())),
        new SlotEvent.Keyed(
            THEN,
            Role.STUDENT,
            4,
            program(
                "A program with a name that is far too long for any column on any paper at all",
                Ramp.at(C.rate(77)))),
        new SlotEvent.Edited(THEN, Role.OTHER, 4));
  }

  private static RegisterSheet sheet(int slots) throws IOException {
    Keypad keypad = gull(slots);
    return RegisterSheet.of(
        "Anchor", "Gull", SlotRegister.of(keypad, events(keypad)), NOW, ZoneOffset.UTC);
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void everySlotHasItsBigNumberAndNothingSpillsOrCollides(PageSize size) throws IOException {
    RegisterSheet sheet = sheet(9);
    byte[] pdf = RegisterPdf.render(sheet, size);
    assertThat(RegisterPdf.render(sheet, size)).isEqualTo(pdf);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      double width = document.getPage(0).getMediaBox().getWidth();
      double height = document.getPage(0).getMediaBox().getHeight();
      double margin = 5 / 25.4 * 72; // common practice, no source: lasers print to some 4.3 mm
      List<PrintedPage.Run> runs = PrintedPage.runs(document);
      for (PrintedPage.Run run : runs) {
        assertThat(run.points()).as(run.text()).isGreaterThanOrEqualTo(7.5);
        assertThat(run.x()).as(run.text()).isGreaterThan(margin);
        assertThat(run.right()).as(run.text()).isLessThan(width - margin);
        assertThat(run.y()).as(run.text()).isLessThan(height - margin);
      }
      for (int i = 0; i < runs.size(); i++) {
        for (int j = i + 1; j < runs.size(); j++) {
          assertThat(runs.get(i).meets(runs.get(j)))
              .as("%s over %s", runs.get(i), runs.get(j))
              .isFalse();
        }
      }
      assertThat(PrintedPage.large(pdf))
          .contains("1", "2", "3", "4", "5", "6", "7", "8", "9", "Slots of Anchor");
    }
    assertThat(PrintedPage.text(pdf))
        .contains("Harbour burnout 732 °C", "26 Nov 2026", "Working heat", "never")
        .contains("Needed, do not overwrite: the Thursday class")
        .contains("May hold something else: it was edited at the keypad, 26 Nov 2026.")
        .contains("good for 30 days", "initials", "printed 2 Dec 2026");
    assertThat(PrintedPage.text(pdf).split("26 Nov 2026", -1)).hasSize(3);
  }

  @Test
  void manySlotsGoOverPagesAndUnknownOnesShareALine() throws IOException {
    RegisterSheet sheet = sheet(99);
    assertThat(sheet.rows())
        .extracting(RegisterSheet.Row::slot)
        .containsExactly("1", "2", "3", "4", "5 to 99");
    byte[] pages = RegisterPdf.render(sheet(24), PageSize.LETTER);
    try (PDDocument document = Loader.loadPDF(pages)) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
    }
    assertThat(PrintedPage.text(pages)).contains("page 2 of 2");
  }
}
