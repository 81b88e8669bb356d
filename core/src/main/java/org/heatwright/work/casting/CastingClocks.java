package org.heatwright.work.casting;

import java.util.List;
import java.util.Optional;
import org.heatwright.material.Origin;

/** The clocks around the kiln, in the order of the work. Gypsum-bonded moulds. */
public final class CastingClocks {

  private static final CastingClock WORKING_TIME =
      clock(
          "working-time",
          "powder meets water until the last mould is filled and freed of air",
          8,
          9,
          10,
          "Have everything weighed and the moulds on the table before the powder goes in; warm"
              + " water, long stirring and a low ratio make it shorter. The data sheet goes first.",
          Origin.practice());

  private static final List<CastingClock> ALL =
      List.of(
          WORKING_TIME,
          clock(
              "standing",
              "filled mould stands, unmoved, before any heat",
              60,
              90,
              120,
              "It gains the strength to bear the steam; longer in damp weather.",
              Origin.read("two bench-forum threads, 1 to 2 h")),
          new CastingClock(
              "keep-damp",
              "standing until the kiln",
              Optional.empty(),
              "Keep it damp: bag it. One tradition wants moulds bone dry instead; half dry is what"
                  + " cracks by both.",
              Origin.read("bench-forum threads, one of which reports the conflict")),
          clock(
              "re-wet",
              "dip a mould that stood for days",
              8 / 60.0,
              10 / 60.0,
              15 / 60.0,
              "About ten seconds in water, then let it drain; the ends of the range are our estimate.",
              Origin.read("a bench-forum thread, about 10 s")),
          clock(
              "steam-dewax",
              "steam out the wax before the burnout",
              60,
              90,
              120,
              "Then straight into a kiln of 120 to 150 °C, still damp. Boiling-hot wax and steam"
                  + " scald; never steam printed resin, it does not melt.",
              new Origin(
                  Origin.Kind.PRACTICE,
                  "the minutes; the kiln's 120 to 150 °C was read in casting instructions and a forum")),
          clock(
              "settle",
              "kiln at pour temperature before the first mould is drawn",
              30,
              60,
              120,
              "30 min for small moulds, 2 h for 100 x 200 mm: the core is hotter than the display"
                  + " says until then. The forecast knows this mould's own time.",
              Origin.read(
                  "a supplier's article (1 h at least), three maker's cycles, a machine's manual")),
          clock(
              "waiting-hot",
              "mould waits at pour temperature",
              0,
              240,
              720,
              "Hours do no harm, days are told of; beyond 12 h be wary of scale and a softened mould.",
              Origin.read("a bench-forum thread (days); the 12 h are our estimate")),
          clock(
              "transfer",
              "kiln door to metal in the mould",
              0.5,
              1,
              2,
              "A pattern 12.5 mm under the surface of a bare 75 x 100 mm mould at 600 °C loses 10 K"
                  + " in 70 s, 25 K in 105 s, 50 K in 159 s; from 480 °C 82, 130 and 207 s. The"
                  + " outermost piece is the clock. Melt first, then draw the mould.",
              Origin.estimate(
                  "conduction into a bare dry cylinder, computed; a ring and the cradle change it")),
          clock(
              "quench",
              "pour to quench",
              5,
              10,
              20,
              "Not before the button has lost its red and all metal is solid; large or heavy ones"
                  + " later. Red gold of 18 karat goes in hot, nickel white gold cools in air. Lower"
                  + " it in slowly: the mould bursts apart in steam and hot slurry.",
              Origin.practice()),
          new CastingClock(
              "breaking-out",
              "break out the casting",
              Optional.empty(),
              "Wet, under water or spray, never dry: what falls off is fine silica. What quenching"
                  + " left comes off with a brush or water jet.",
              Origin.practice()));

  private CastingClocks() {}

  public static List<CastingClock> all() {
    return ALL;
  }

  /** From powder meeting water to the last mould filled. */
  public static CastingClock workingTime() {
    return WORKING_TIME;
  }

  private static CastingClock clock(
      String code,
      String what,
      double lowMinutes,
      double usualMinutes,
      double highMinutes,
      String advice,
      Origin origin) {
    return new CastingClock(
        code, what, Optional.of(new Spread(lowMinutes, usualMinutes, highMinutes)), advice, origin);
  }
}
