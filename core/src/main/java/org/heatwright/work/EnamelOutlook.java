package org.heatwright.work;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.material.Viscosity;
import org.heatwright.mould.Surroundings;
import org.heatwright.units.Temperature;
import org.heatwright.work.enamel.EnamelFit;
import org.heatwright.work.enamel.EnamelGlass;
import org.heatwright.work.enamel.EnamelMetal;
import org.heatwright.work.enamel.Fusing;
import org.heatwright.work.enamel.FusingClass;
import org.heatwright.work.enamel.PieceBody;
import org.heatwright.work.enamel.PieceCurve;
import org.heatwright.work.enamel.PullWindow;
import org.heatwright.work.enamel.Range;
import org.heatwright.work.enamel.TestTile;
import org.heatwright.work.enamel.ThermalShock;
import org.heatwright.work.enamel.TileCalibration;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * What is to be expected of one piece in this kiln at one working temperature, and of a session of
 * them.
 *
 * @param working the chamber's setting
 * @param window when to take it out
 * @param curve the piece on its own clock
 * @param nearSeconds until the piece is within 20 K of the chamber, s
 * @param hottestCelsius the hottest it becomes if it is forgotten, over what is not known
 * @param fallKelvins how far the display falls when the door opens
 * @param backSeconds from the door's shutting until it is back; infinite where it is not
 * @param simulated whether the last two are this kiln's
 * @param piecesAnHour one after another; 0 where the enamel does not gloss
 * @param decades by how many decades the enamel needs more flow than usual for its class
 * @param tiles what the tiles say, if there are any
 */
public record EnamelOutlook(
    Temperature working,
    PullWindow window,
    EnamelPieceCurve curve,
    Range nearSeconds,
    Range hottestCelsius,
    Range fallKelvins,
    Range backSeconds,
    boolean simulated,
    Range piecesAnHour,
    Range decades,
    Optional<Tiles> tiles) {

  /** A piece that is followed this near to the chamber has its heat, K. */
  static final double NEAR_KELVINS = 20;

  private static final double ROOM_CELSIUS = 20;

  /** A tile that would leave more than this of the spread teaches too little to ask for. */
  private static final double WORTH_SHARE = 0.85;

  /**
   * What test tiles say.
   *
   * @param count how many
   * @param factorLow the enamel needs this many times the usual time at heat, 5th percentile
   * @param factorMedian usual
   * @param factorHigh 95th percentile
   * @param odd positions of tiles that contradict, 1-based
   */
  public record Tiles(
      int count, double factorLow, double factorMedian, double factorHigh, List<Integer> odd) {
    public Tiles {
      odd = List.copyOf(odd);
    }
  }

  /**
   * The tile that would narrow the window most.
   *
   * @param seconds how long it should be in, from the door's shutting, s
   * @param nowFactor the window is known to this factor either way
   * @param thenFactor and would be to this one
   */
  public record NextTile(double seconds, double nowFactor, double thenFactor) {}

  /** The outlook for a kiln as it is. */
  static EnamelOutlook of(EnamelWork work, Kiln kiln, EnamelDoor.Model model, Temperature working) {
    return of(work, model.at(kiln, working, EnamelColdLoad.of(work)), working);
  }

  static EnamelOutlook of(EnamelWork work, EnamelDoor door, Temperature working) {
    Viscosity viscosity = viscosity(work);
    PieceBody body = body(work);
    Range prior = prior(work);
    Optional<TileCalibration> calibration =
        work.build().tiles().isEmpty()
            ? Optional.empty()
            : Optional.of(TileCalibration.of(prior, seen(work, body, viscosity, door, working)));
    Range decades = calibration.map(TileCalibration::decades).orElse(prior);
    List<PieceCurve> curves = curves(body, door);
    PullWindow window = PullWindow.of(curves, viscosity, decades);
    Range near =
        Range.ofSample(
            curves.stream()
                .mapToDouble(c -> c.secondsTo(c.chamberCelsiusAt(c.lastSecond()) - NEAR_KELVINS))
                .toArray());
    Range hottest =
        Range.ofSample(
            curves.stream().mapToDouble(c -> c.hottestCelsius(c.lastSecond())).toArray());
    return new EnamelOutlook(
        working,
        window,
        banded(curves, window),
        near,
        hottest,
        door.fallKelvins(),
        door.backSeconds(),
        door.simulated(),
        piecesAnHour(window, door),
        decades,
        calibration.map(c -> tiles(c, work.build().tiles().size())));
  }

  // ---- the piece

  /** The enamel's viscosity: of its class, moved to the maker's softening point. */
  public static Viscosity viscosity(EnamelWork work) {
    Viscosity usual = work.hardness().fusing().viscosity();
    return work.build()
        .softening()
        .map(
            t ->
                usual.thickerBy(
                    Viscosity.SOFTENING_LOG_POISE - usual.logPoiseAt(t),
                    Origin.own("softening point of the enamel")))
        .orElse(usual);
  }

  static Range prior(EnamelWork work) {
    return work.build().softening().isPresent() ? Fusing.KNOWN_POINT_DECADES : Fusing.PRIOR_DECADES;
  }

  /** The piece as something that is heated. */
  public static PieceBody body(EnamelWork work) {
    EnamelBuild build = work.build();
    PieceBody.Underside underside =
        build.counter().isPresent()
            ? PieceBody.Underside.COUNTER_ENAMEL
            : switch (work.metal()) {
              case COPPER, STEEL, STERLING_925 -> PieceBody.Underside.OXIDISED;
              default -> PieceBody.Underside.BRIGHT;
            };
    return PieceBody.of(
        work.metal().physical(),
        work.sheetMetres(),
        build.frontMetres() + build.backMetres(),
        underside);
  }

  /** The enamel on the front: what is given of it, or what is sold for the metal. */
  private static EnamelGlass front(EnamelWork work) {
    FusingClass fusing = work.hardness().fusing();
    return work.build()
        .expansion()
        .map(e -> e.glass(fusing))
        .orElse(EnamelGlass.soldFor(work.metal().physical(), fusing));
  }

  /** A sudden chill under water that brings the enamel to its usual strength, K. */
  static double severeShockKelvins(EnamelWork work) {
    return ThermalShock.severeKelvins(front(work));
  }

  /** How the enamel sits on the metal when it is cold; the kiln has no say in it. */
  public static EnamelFit fit(EnamelWork work) {
    FusingClass fusing = work.hardness().fusing();
    EnamelBuild build = work.build();
    EnamelMetal metal = work.metal().physical();
    EnamelGlass front = front(work);
    return EnamelFit.of(
        new EnamelFit.Piece(
            metal,
            work.sheetMetres(),
            front,
            build.frontMetres(),
            build.counter().map(c -> c.expansion().map(e -> e.glass(fusing)).orElse(front)),
            build.backMetres(),
            work.pieceMetres()));
  }

  /** Equally likely curves: the chambers paired with what is not known of the piece. */
  private static List<PieceCurve> curves(PieceBody body, EnamelDoor door) {
    int n = Math.max(3, door.draws().size()) | 1;
    NormalDistribution normal = new NormalDistribution();
    List<PieceCurve> curves = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      // Two has no common divisor with an odd number: every slice comes once.
      double slice = ((2 * k) % n + 0.5) / n;
      curves.add(
          body.follow(
              door.draws().get(k % door.draws().size()),
              ROOM_CELSIUS,
              EnamelDoor.FOLLOWED_SECONDS,
              normal.inverseCumulativeProbability(slice)));
    }
    return curves;
  }

  private static EnamelPieceCurve banded(List<PieceCurve> curves, PullWindow window) {
    double until =
        Math.min(
            EnamelDoor.FOLLOWED_SECONDS,
            Math.max(
                120, Double.isFinite(window.latestSeconds()) ? 1.5 * window.latestSeconds() : 600));
    int rows = 60;
    List<EnamelPieceCurve.Row> table = new ArrayList<>();
    for (int i = 0; i <= rows; i++) {
      double second = Math.rint(until * i / rows);
      double[] piece = curves.stream().mapToDouble(c -> c.celsiusAt(second)).sorted().toArray();
      double[] chamber =
          curves.stream().mapToDouble(c -> c.chamberCelsiusAt(second)).sorted().toArray();
      Range band = Range.ofSample(piece);
      table.add(
          new EnamelPieceCurve.Row(
              second, band.low(), band.median(), band.high(), chamber[chamber.length / 2]));
    }
    return new EnamelPieceCurve(table);
  }

  // ---- the session

  private static Range piecesAnHour(PullWindow window, EnamelDoor door) {
    double[] stays = {window.latestSeconds(), window.likelySeconds(), window.earliestSeconds()};
    double[] backs = {
      door.backSeconds().high(), door.backSeconds().median(), door.backSeconds().low()
    };
    double[] rates =
        IntStream.range(0, 3)
            .mapToDouble(
                i -> {
                  double cycle =
                      Math.max(stays[i], Math.min(backs[i], EnamelDoor.FOLLOWED_SECONDS))
                          + EnamelDoor.OPEN_SECONDS;
                  return Double.isFinite(cycle) ? 3600 / cycle : 0;
                })
            .toArray();
    Arrays.sort(rates);
    return Range.of(rates[0], rates[1], rates[2]);
  }

  // ---- tiles

  private static List<TileCalibration.Seen> seen(
      EnamelWork work, PieceBody body, Viscosity viscosity, EnamelDoor door, Temperature working) {
    Surroundings chamber = door.usual();
    List<TileCalibration.Seen> seen = new ArrayList<>();
    for (TestTile tile : work.build().tiles()) {
      double hotter = tile.chamberCelsius() - working.celsius();
      Surroundings about =
          Surroundings.sampled(
              Math.max(tile.seconds(), 30),
              5,
              second -> chamber.gasCelsiusAt(second) + hotter,
              second -> chamber.wallsCelsiusAt(second) + hotter);
      PieceCurve curve = body.follow(about, ROOM_CELSIUS, tile.seconds(), 0);
      seen.add(
          new TileCalibration.Seen(
              Fusing.decadesFromGlossAt(curve, viscosity, tile.seconds()), tile.look()));
    }
    return seen;
  }

  private static Tiles tiles(TileCalibration calibration, int count) {
    Range decades = calibration.decades();
    return new Tiles(
        count,
        Math.pow(10, decades.low()),
        Math.pow(10, decades.median()),
        Math.pow(10, decades.high()),
        calibration.odd().stream().map(i -> i + 1).toList());
  }

  /** The tile that would narrow the window most, if one would: at this heat, of this sheet. */
  Optional<NextTile> nextTile(EnamelWork work) {
    Viscosity viscosity = viscosity(work);
    TileCalibration now = TileCalibration.of(decades, List.of());
    double[] seconds = curve.rows().stream().mapToDouble(EnamelPieceCurve.Row::seconds).toArray();
    double[] celsius =
        curve.rows().stream().mapToDouble(EnamelPieceCurve.Row::medianCelsius).toArray();
    double best = Double.POSITIVE_INFINITY;
    double pull = 0;
    for (int i = 3; i < seconds.length; i += 3) {
      double flow =
          viscosity.flowPerPascal(Arrays.copyOf(seconds, i + 1), Arrays.copyOf(celsius, i + 1));
      double then = now.deviationAfter(Math.log10(flow) - Fusing.GLOSS_LOG_FLOW);
      if (then < best) {
        best = then;
        pull = seconds[i];
      }
    }
    double before = now.deviationDecades();
    return best < WORTH_SHARE * before
        ? Optional.of(
            new NextTile(
                pull,
                Math.pow(10, Range.DEVIATIONS * before),
                Math.pow(10, Range.DEVIATIONS * best)))
        : Optional.empty();
  }
}
