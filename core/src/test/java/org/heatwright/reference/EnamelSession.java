package org.heatwright.reference;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.enamel.LoggedOpenings;

/**
 * A random enamelling session in a kiln simulated apart: up to the working heat, held, and the door
 * opened every few minutes for a cold piece that goes in as the last one comes out. Ranges are our
 * estimates.
 *
 * @param kiln that ran it
 * @param schedule what ran
 * @param openings true beginnings and ends, s
 * @param joulesPerKelvin true heat of a piece with what carries it, J/K
 * @param conditions true
 * @param seed of chance
 */
public record EnamelSession(
    RichKiln kiln,
    Schedule schedule,
    List<double[]> openings,
    double joulesPerKelvin,
    FiringConditions conditions,
    long seed) {

  private static final double COOLS_SECONDS = 1800;
  private static final double WORKING_CELSIUS = 820;

  /** The session of a seed in its kiln; the kiln settles for twenty minutes first. */
  public static EnamelSession draw(long seed) {
    RichKiln kiln = KilnPopulation.draw(seed);
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 991);
    double arrives = KilnPopulation.secondsTo(kiln.nameplate(), kiln.truth(), WORKING_CELSIUS - 5);
    int count = 6 + chance.nextInt(9);
    double second = Math.ceil((arrives + 1200) / 10) * 10 + chance.nextInt(10);
    List<double[]> openings = new ArrayList<>();
    for (int i = 0; i <= count; i++) {
      double open = 12 + 18 * chance.nextDouble();
      openings.add(new double[] {second, second + open});
      second += open + 90 + 150 * chance.nextDouble();
    }
    double joules = 12 * Math.pow(10, chance.nextDouble());
    List<Disturbance> doors = new ArrayList<>();
    List<ColdPieces.Change> changes = new ArrayList<>();
    for (int i = 0; i <= count; i++) {
      double[] one = openings.get(i);
      doors.add(new Disturbance(Disturbance.Kind.DOOR_OPEN, one[0], one[1] - one[0]));
      // The last is opened to take the last piece out.
      changes.add(new ColdPieces.Change(one[1], i < count));
    }
    double area = joules * 4e-4 * Math.exp(0.3 * chance.nextGaussian());
    long minutes = Math.round((second + 600 - arrives) / 60);
    return new EnamelSession(
        kiln,
        Schedule.of(
            "enamel session",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(
                    Ramp.fastest(),
                    Temperature.ofCelsius(WORKING_CELSIUS),
                    Duration.ofMinutes(minutes)))),
        openings,
        joules,
        FiringConditions.usual().with(doors, Optional.of(new ColdPieces(joules, area, changes))),
        seed);
  }

  /** Whether the kiln reaches the working heat at all. */
  public boolean possible() {
    return kiln.nameplate().limit().celsius() >= WORKING_CELSIUS + 100
        && Double.isFinite(openings.get(0)[0]);
  }

  /** Fires it and half an hour more. */
  public RichFiring fire(Optional<Fault> fault) {
    double last = openings.get(openings.size() - 1)[1];
    double until = last + 3600 + COOLS_SECONDS;
    RichFiring all = kiln.fire(schedule, conditions, 0, fault, seed + 3, until);
    return all;
  }

  /** What a logger kept, every ten seconds. */
  public Readings readings(RichFiring firing) {
    double end = firing.programEndSeconds();
    double last = openings.get(openings.size() - 1)[1];
    return ForecastStudy.readings(
        firing, Double.isFinite(end) ? end + COOLS_SECONDS : last + 3600 + COOLS_SECONDS);
  }

  /**
   * The log as the product gets it.
   *
   * @param told whether the person wrote down when the door was opened and shut
   */
  public LoggedFiring logged(RichFiring firing, boolean told) {
    Readings readings = readings(firing);
    List<Optional<String>> events =
        new ArrayList<>(Collections.nCopies(readings.size(), Optional.<String>empty()));
    if (told) {
      for (int i = 0; i < openings.size(); i++) {
        int open = (int) Math.round(openings.get(i)[0] / RichFiring.ROW_SECONDS);
        int shut = (int) Math.round(openings.get(i)[1] / RichFiring.ROW_SECONDS);
        events.set(
            open,
            Optional.of(
                i + 1 < openings.size() ? "door-open piece " + (i + 1) : "door-open empty"));
        events.set(Math.max(open + 1, shut), Optional.of("door-shut"));
      }
    }
    double[] setpoint = new double[readings.size()];
    java.util.Arrays.fill(setpoint, Double.NaN);
    return LoggedOpenings.in(
        new LoggedFiring("session", schedule, FiringConditions.usual(), Charge.empty(), readings),
        setpoint,
        events);
  }
}
