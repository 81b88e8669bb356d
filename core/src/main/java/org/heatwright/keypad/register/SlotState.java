package org.heatwright.keypad.register;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.schedule.Schedule;

/**
 * A slot after everything that was told of it.
 *
 * @param slot its number
 * @param contents what it holds
 * @param proof the last proof of what it holds or held, if there was one
 * @param ended what was told that ended the proof; age is judged apart
 * @param need who needs its program
 * @param history what was told of it, oldest first
 */
public record SlotState(
    int slot,
    Holding contents,
    Optional<Proof> proof,
    Optional<Ending> ended,
    Optional<Need> need,
    List<SlotEvent> history) {

  public SlotState {
    history = List.copyOf(history);
  }

  static SlotState of(int slot, List<SlotEvent> events) {
    Fold fold = new Fold();
    List<SlotEvent> history = new ArrayList<>();
    for (SlotEvent event : events) {
      if (event.concerns(slot)) {
        history.add(event);
        fold.take(event);
      }
    }
    return new SlotState(slot, fold.contents, fold.proof, fold.ended, fold.need, history);
  }

  /** Takes event after event; used once, by one thread. */
  private static final class Fold {

    private Holding contents = Holding.UNKNOWN;
    private Optional<Proof> proof = Optional.empty();
    private Optional<Ending> ended = Optional.empty();
    private Optional<Need> need = Optional.empty();
    private Rules rules = Rules.USUAL;

    void take(SlotEvent event) {
      if (event instanceof SlotEvent.Keyed keyed) {
        holds(Holding.of(Holding.Known.KEYED, event, keyed.program(), List.of()));
        end(event, Cause.KEYED);
      } else if (event instanceof SlotEvent.Learned learned) {
        learned(learned);
      } else if (event instanceof SlotEvent.ReadBack read) {
        readBack(read);
      } else if (event instanceof SlotEvent.Edited) {
        upset(event, Cause.EDITED);
      } else if (event instanceof SlotEvent.Ran) {
        if (contents.program().filter(p -> !p.startDelay().isZero()).isPresent()) {
          upset(event, Cause.RAN);
        }
      } else if (event instanceof SlotEvent.Protected wanted) {
        need = Optional.of(new Need(wanted.what(), wanted.until(), wanted.at(), wanted.by()));
      } else if (event instanceof SlotEvent.Released) {
        need = Optional.empty();
      } else if (event instanceof SlotEvent.UnitSwitched) {
        upset(event, Cause.UNIT_SWITCHED);
      } else if (event instanceof SlotEvent.PowerCut) {
        if (!rules.keepsPrograms()) {
          upset(event, Cause.POWER_CUT);
        }
      } else if (event instanceof SlotEvent.FiredByOther) {
        upset(event, Cause.FIRED_BY_OTHER);
      } else if (event instanceof SlotEvent.Reset) {
        upset(event, Cause.RESET);
      } else if (event instanceof SlotEvent.RulesSet set) {
        rules = set.rules();
      }
    }

    /** A program is there now; if it is another one, what was so of the one before is over. */
    private void holds(Holding now) {
      if (!isSame(now.program())) {
        proof = Optional.empty();
        ended = Optional.empty();
        if (contents.program().isPresent()) {
          need = Optional.empty();
        }
      }
      contents = now;
    }

    private boolean isSame(Optional<Schedule> program) {
      return contents.program().map(p -> unnamed(p)).equals(program.map(p -> unnamed(p)));
    }

    private static Schedule unnamed(Schedule program) {
      return program.withName("program");
    }

    private void learned(SlotEvent.Learned learned) {
      if (contents.doubt().isEmpty() && saysAgain(learned)) {
        return;
      }
      holds(Holding.of(Holding.Known.LEARNED, learned, learned.program(), learned.notShown()));
    }

    /** Whether it is what is known already; a start delay that was not shown says nothing. */
    private boolean saysAgain(SlotEvent.Learned learned) {
      Schedule read = learned.program();
      return isSame(Optional.of(read))
          || contents.program().isPresent()
              && !learned.notShown().isEmpty()
              && isSame(contents.program().map(p -> read.withStartDelay(p.startDelay())));
    }

    private void readBack(SlotEvent.ReadBack read) {
      Evidence evidence = read.evidence();
      if (!evidence.ofItsSlot() || !evidence.program().fits()) {
        return; // says nothing of this slot
      }
      Optional<Proof> made = read.proof();
      if (made.isPresent()) {
        if (!isSame(Optional.of(evidence.planned()))) {
          holds(Holding.of(Holding.Known.READ_BACK, read, evidence.planned(), List.of()));
        }
        contents = contents.proven();
        proof = made;
        ended = Optional.empty();
      } else if (evidence.report().outcome() == Outcome.NOT_PROVEN) {
        upset(read, Cause.READ_DIFFERENT);
      } else if (!isSame(Optional.of(evidence.planned()))) {
        // The values are right, but in which unit is open.
        holds(Holding.of(Holding.Known.LEARNED, read, evidence.planned(), List.of()));
      }
    }

    private void upset(SlotEvent event, Cause cause) {
      contents = contents.doubted(new Ending(cause, event.at()));
      end(event, cause);
    }

    private void end(SlotEvent event, Cause cause) {
      if (proof.isPresent() && ended.isEmpty()) {
        ended = Optional.of(new Ending(cause, event.at()));
      }
    }
  }
}
