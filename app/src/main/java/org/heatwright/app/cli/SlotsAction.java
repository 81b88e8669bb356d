package org.heatwright.app.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.app.slots.SlotBook;
import org.heatwright.app.slots.SlotWords;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.SlotState;
import org.heatwright.keypad.register.Standing;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What every command about a register has: where it is, and the answer as it stands then. */
abstract class SlotsAction implements Callable<Integer> {

  @Option(
      names = "--kiln",
      required = true,
      paramLabel = "NAME",
      description = "Kiln's name on the shelf.")
  private String kiln;

  @Option(
      names = "--keypad",
      paramLabel = "NAME",
      description = "Keypad's name on the shelf. Usual: the one last told of.")
  private Optional<String> keypad;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  /** What the command ends with, if it did what it was asked. */
  int code = Answer.DONE;

  private final Surroundings surroundings;

  SlotsAction(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /**
   * A kiln's keypad in an open store.
   *
   * @param name the keypad's name on the shelf
   */
  record Place(SlotBook book, String kiln, String name, Keypad keypad, ZoneId zone) {

    SlotRegister register() {
      return book.register(kiln, name, keypad);
    }

    Instant now() {
      return book.now();
    }
  }

  /**
   * What the command is for.
   *
   * @param place where
   * @return sentences to say first
   */
  abstract List<String> act(Place place);

  @Override
  public Integer call() {
    try (Store store = ownStore.open(surroundings)) {
      Place place = place(store, surroundings, kiln, keypad);
      List<String> said = act(place);
      SlotRegister register = place.register();
      answer.give(
          surroundings,
          SlotsJson.of(kiln, place.name(), register, place.now(), said),
          page(place, register, said));
      return code;
    }
  }

  static Place place(Store store, Surroundings surroundings, String kiln, Optional<String> keypad) {
    Document kilnText = onShelf(store, Kind.KILN, "--kiln", kiln);
    String name =
        keypad
            .or(() -> store.keypadOf(kiln))
            .or(() -> only(store))
            .orElseThrow(
                () ->
                    InputException.in(
                        "--keypad",
                        "nothing was told yet of %s; expected the name of its keypad: %s."
                            .formatted(kiln, names(store, Kind.KEYPAD))));
    Document keypadText = onShelf(store, Kind.KEYPAD, "--keypad", name);
    return new Place(
        new SlotBook(store, surroundings.clock()),
        kiln,
        name,
        KeypadFile.read(keypadText.text(), name),
        KilnFile.read(kilnText.text(), kiln).timeZone().orElse(surroundings.clock().getZone()));
  }

  private static Optional<String> only(Store store) {
    List<Document> keypads = store.all(Kind.KEYPAD);
    return keypads.size() == 1 ? Optional.of(keypads.get(0).name()) : Optional.empty();
  }

  private static Document onShelf(Store store, Kind kind, String option, String name) {
    return store
        .find(kind, name)
        .orElseThrow(
            () ->
                InputException.in(
                    option,
                    "there is no %s \"%s\" on the shelf; expected %s."
                        .formatted(kind.word(), name, names(store, kind))));
  }

  private static String names(Store store, Kind kind) {
    List<Document> all = store.all(kind);
    return all.isEmpty()
        ? "one, but the shelf has none: put it there with heatwright serve"
        : all.stream().map(Document::name).collect(Collectors.joining(" or "));
  }

  static Role role(String word) {
    return Role.ofWord(word)
        .orElseThrow(
            () ->
                InputException.in(
                    "--by",
                    "\"%s\" is not a role; expected %s (names are not kept)."
                        .formatted(
                            word,
                            Arrays.stream(Role.values())
                                .map(Role::word)
                                .collect(Collectors.joining(", ")))));
  }

  private static Page page(Place place, SlotRegister register, List<String> said) {
    Page page = new Page();
    said.forEach(page::line);
    if (!said.isEmpty()) {
      page.blank();
    }
    page.line("Slots of %s, on %s".formatted(place.kiln(), place.name())).blank();
    int width = Integer.toString(register.keypad().slots()).length();
    List<String> unknown = new ArrayList<>();
    for (SlotState state : register.slots()) {
      if (state.contents().program().isEmpty() && state.need().isEmpty()) {
        unknown.add(Integer.toString(state.slot()));
        continue;
      }
      String lead = "%" + width + "d  ";
      String rest = " ".repeat(width + 2);
      page.hanging(lead.formatted(state.slot()), SlotWords.program(state.contents()));
      state
          .contents()
          .program()
          .ifPresent(p -> page.hanging(rest, SlotWords.values(p, register.keypad())));
      String since = SlotWords.since(state.contents(), place.zone());
      if (!since.isEmpty()) {
        page.hanging(rest, since);
      }
      state.need().ifPresent(n -> page.hanging(rest, "needed: " + SlotWords.need(n)));
      Standing standing = register.standing(state, place.now());
      page.hanging(rest, standing.sentence(place.now(), place.zone()));
      if (standing.kind() == Standing.Kind.GOOD) {
        standing
            .proof()
            .ifPresent(p -> p.unproven().forEach(u -> page.hanging(rest + "not covered: ", u)));
      }
    }
    if (!unknown.isEmpty()) {
      page.hanging("Not known: ", String.join(", ", unknown) + ".");
    }
    page.blank().line(SlotWords.rules(register.rules()));
    List<SlotEvent> history = register.history();
    if (!history.isEmpty()) {
      page.blank().line("Told last:");
      for (SlotEvent event : history.subList(Math.max(0, history.size() - 8), history.size())) {
        String where = event instanceof SlotEvent.OfSlot of ? "slot " + of.slot() + " " : "";
        page.hanging(
            "  ",
            "%s, %s: %s%s"
                .formatted(
                    SlotWords.moment(event.at(), place.zone()),
                    event.by().word(),
                    where,
                    SlotWords.what(event)));
      }
    }
    return page;
  }
}
