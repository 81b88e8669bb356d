package org.heatwright.app.json;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.YamlValue;
import org.heatwright.app.slots.SlotWords;
import org.heatwright.keypad.register.Holding;
import org.heatwright.keypad.register.Need;
import org.heatwright.keypad.register.Proof;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.SlotState;
import org.heatwright.keypad.register.Standing;

/** What {@code slots --json} prints; times are ISO 8601 in UTC. */
public record SlotsJson(
    String kiln,
    String keypad,
    int goodForDays,
    boolean keepsPrograms,
    List<String> said,
    List<SlotJson> slots,
    List<ToldJson> history) {

  /**
   * One slot; {@code known} is not, keyed, learned or read-back; {@code standing} is good, expired
   * or never.
   */
  public record SlotJson(
      int slot,
      String known,
      Optional<ScheduleJson> program,
      Optional<String> since,
      Optional<String> by,
      Optional<String> doubt,
      String standing,
      Optional<String> endedBy,
      Optional<ProofJson> proof,
      Optional<NeedJson> need) {}

  /** The last proof of what is in the slot, good or not. */
  public record ProofJson(
      String at,
      String by,
      String unit,
      String unitFrom,
      List<String> covers,
      List<String> unproven) {}

  /** Who needs the program. */
  public record NeedJson(String what, Optional<String> until) {}

  /** One line of the history; slot 0 is the whole keypad. */
  public record ToldJson(String at, String by, int slot, String what) {}

  /** The record of a register at a moment. */
  public static SlotsJson of(
      String kiln, String keypad, SlotRegister register, Instant now, List<String> said) {
    return new SlotsJson(
        kiln,
        keypad,
        register.rules().goodForDays(),
        register.rules().keepsPrograms(),
        said,
        register.slots().stream().map(s -> slot(s, register.standing(s, now))).toList(),
        register.history().stream().map(SlotsJson::told).toList());
  }

  private static SlotJson slot(SlotState state, Standing standing) {
    Holding contents = state.contents();
    return new SlotJson(
        state.slot(),
        YamlValue.word(contents.known()),
        contents.program().map(ScheduleJson::of),
        contents.since().map(Instant::toString),
        contents.by().map(r -> r.word()),
        contents.doubt().map(d -> YamlValue.word(d.cause())),
        YamlValue.word(standing.kind()),
        standing.ended().map(e -> YamlValue.word(e.cause())),
        standing.proof().map(SlotsJson::proof),
        state.need().map(SlotsJson::need));
  }

  private static ProofJson proof(Proof proof) {
    return new ProofJson(
        proof.at().toString(),
        proof.by().word(),
        proof.unit().letter(),
        YamlValue.word(proof.unitGround()),
        proof.covers(),
        proof.unproven());
  }

  private static NeedJson need(Need need) {
    return new NeedJson(need.what(), need.until().map(d -> d.toString()));
  }

  private static ToldJson told(SlotEvent event) {
    return new ToldJson(
        event.at().toString(),
        event.by().word(),
        event instanceof SlotEvent.OfSlot of ? of.slot() : 0,
        SlotWords.what(event));
  }
}
