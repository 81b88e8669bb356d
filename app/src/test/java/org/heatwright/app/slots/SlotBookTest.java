package org.heatwright.app.slots;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.SlotEntry;
import org.heatwright.app.store.Store;
import org.heatwright.app.store.StoreException;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.Rules;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.Standing;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SlotBookTest {

  private static final Instant NOON = Instant.parse("2026-12-02T12:00:00.123Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);

  @TempDir private Path folder;

  private static Keypad keypad(String name) throws IOException {
    return KeypadFile.read(
        Files.readString(Path.of("src/main/resources/demo/keypads/" + name + ".yaml")), name);
  }

  private static Schedule generated(Random random, Keypad keypad) {
    while (true) {
      TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
      List<Segment> segments = new ArrayList<>();
      int count = 1 + random.nextInt(6);
      for (int i = 0; i < count; i++) {
        segments.add(
            new Segment(
                random.nextInt(5) == 0
                    ? Ramp.fastest()
                    : Ramp.at(unit.rate(60 + random.nextInt(600))),
                unit.temperature(100 + random.nextInt(850)),
                Duration.ofMinutes(random.nextInt(500))));
      }
      FittedProgram fitted =
          KeypadFit.fit(
              Schedule.of("Generated, “quoted”: yes", unit, segments)
                  .withStartDelay(Duration.ofMinutes(random.nextInt(600))),
              keypad);
      if (fitted.fits()) {
        return fitted.expressible();
      }
    }
  }

  private static SlotEvent.ReadBack right(Keypad keypad, int slot, Schedule plan) {
    FittedProgram program = KeypadFit.fit(plan, keypad);
    Map<String, String> byPlace = new HashMap<>();
    for (KeyedValue value : program.values()) {
      boolean unused = value.kind() == KeyedValue.Kind.END && value.segment() > 0;
      byPlace.put(
          unused ? "segment " + value.segment() + ", first value" : value.place(), value.digits());
    }
    List<Shown.Value> values = new ArrayList<>();
    for (ReadbackQuestion question : Readback.questions(program, keypad)) {
      values.add(
          new Shown.Value(Integer.toString(question.position()), byPlace.get(question.words())));
    }
    boolean celsius = program.unit() == TemperatureUnit.CELSIUS;
    return new SlotEvent.ReadBack(
        NOON,
        Role.TEACHER,
        new Evidence(
            plan,
            keypad,
            slot,
            new Shown(OptionalInt.of(slot), Optional.empty(), values),
            Optional.of(UnitCheck.judge(celsius ? 19 : 66, 19, TemperatureUnit.CELSIUS, true))));
  }

  @Test
  void everyEventComesBackAsItWasTold() throws IOException {
    Keypad gull = keypad("gull");
    Schedule plan = generated(new Random(1), gull);
    List<SlotEvent> told =
        List.of(
            new SlotEvent.Keyed(NOON, Role.STUDENT, 3, plan),
            right(gull, 3, plan),
            new SlotEvent.Learned(NOON, Role.MAKER, 4, plan, List.of("The delay.", "The end.")),
            new SlotEvent.Learned(NOON, Role.MAKER, 4, plan, List.of()),
            new SlotEvent.Edited(NOON, Role.OTHER, 5),
            new SlotEvent.Ran(NOON, Role.MAKER, 3),
            new SlotEvent.Protected(
                NOON, Role.TEACHER, 3, "Class: “Thursday”", Optional.of(LocalDate.of(2026, 12, 3))),
            new SlotEvent.Protected(NOON, Role.TEACHER, 9, "ours", Optional.empty()),
            new SlotEvent.Released(NOON, Role.TEACHER, 3),
            new SlotEvent.UnitSwitched(NOON, Role.MAKER),
            new SlotEvent.PowerCut(NOON, Role.MAKER),
            new SlotEvent.FiredByOther(NOON, Role.MAKER),
            new SlotEvent.Reset(NOON, Role.TECHNICIAN),
            new SlotEvent.RulesSet(NOON, Role.TECHNICIAN, new Rules(14, true)));
    Path file = folder.resolve("heatwright.db");
    try (Store store = Store.open(file, CLOCK)) {
      DemoStudio.fill(store);
      SlotBook book = new SlotBook(store, CLOCK);
      told.forEach(event -> book.tell("Anchor", "Gull", event));
      book.tell("Buoy", "Gull", new SlotEvent.PowerCut(NOON, Role.MAKER));
      assertThat(store.keypadOf("Anchor")).contains("Gull");
      assertThat(store.keypadOf("Capstan")).isEmpty();
      assertThatThrownBy(() -> book.tell("Dinghy", "Gull", told.get(0)))
          .hasMessage("There is no kiln Dinghy on the shelf.");
    }
    try (Store store = Store.open(file, CLOCK)) {
      SlotBook book = new SlotBook(store, CLOCK);
      SlotRegister register = book.register("Anchor", "Gull", gull);
      assertThat(register.history()).isEqualTo(told);
      assertThat(register.rules()).isEqualTo(new Rules(14, true));
      assertThat(book.register("Buoy", "Gull", gull).history()).hasSize(1);
      assertThat(book.register("Anchor", "Tern", keypad("tern")).history()).isEmpty();
    }
  }

  @Test
  void aProofIsWorthTheSameAfterItWasKept() throws IOException {
    Random random = new Random(20261126);
    for (String name : List.of("tern", "gull", "heron")) {
      Keypad keypad = keypad(name);
      for (int run = 0; run < 150; run++) {
        Schedule plan = generated(random, keypad);
        SlotEvent.ReadBack told = right(keypad, 2, plan);
        assertThat(told.proof()).as("%s run %d", name, run).isPresent();
        SlotEvent.ReadBack kept = (SlotEvent.ReadBack) SlotBook.event(SlotBook.entry(told));
        assertThat(kept.evidence().program().values())
            .isEqualTo(told.evidence().program().values());
        assertThat(kept.proof().orElseThrow().unproven())
            .isEqualTo(told.proof().orElseThrow().unproven());
        SlotRegister register = SlotRegister.of(keypad, List.of(kept));
        assertThat(register.standing(2, NOON).kind()).isEqualTo(Standing.Kind.GOOD);
      }
    }
  }

  @Test
  void writersAtOnceLoseNothing() throws Exception {
    Path file = folder.resolve("heatwright.db");
    try (Store one = Store.open(file, CLOCK);
        Store two = Store.open(file, CLOCK)) {
      DemoStudio.fill(one);
      ExecutorService threads = Executors.newFixedThreadPool(4);
      try {
        List<Callable<Object>> writers = new ArrayList<>();
        for (int t = 0; t < 4; t++) {
          SlotBook book = new SlotBook(t % 2 == 0 ? one : two, CLOCK);
          int slot = t + 1;
          writers.add(
              () -> {
                for (int i = 0; i < 25; i++) {
                  book.tell("Anchor", "Gull", new SlotEvent.Edited(NOON, Role.MAKER, slot));
                }
                return null;
              });
        }
        for (Future<Object> done : threads.invokeAll(writers)) {
          done.get();
        }
      } finally {
        threads.shutdownNow();
      }
      assertThat(one.slotsTold("Anchor", "Gull")).hasSize(100);
    }
  }

  @Test
  void aLineThatCannotBeReadIsToldInOneSentence() {
    try (Store store = Store.temporary(CLOCK)) {
      DemoStudio.fill(store);
      SlotEntry good = SlotBook.entry(new SlotEvent.Edited(NOON, Role.MAKER, 1));
      store.tellSlot(
          "Anchor",
          "Gull",
          new SlotEntry(
              1,
              "keyed",
              "maker",
              "no schedule",
              "",
              "",
              "",
              "",
              good.untilDay(),
              good.goodForDays(),
              good.keepsPrograms(),
              NOON));
      assertThat(store.find(Kind.KEYPAD, "Gull")).isPresent();
      assertThatThrownBy(
              () -> new SlotBook(store, CLOCK).register("Anchor", "Gull", keypad("gull")))
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith("The store's slot register holds a line");
    }
  }
}
