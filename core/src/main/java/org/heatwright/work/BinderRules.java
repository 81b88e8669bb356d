package org.heatwright.work;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.casting.UsualMould;

/**
 * Rules of practice that differ by what binds a mould. Diameters are those of the thickest mould,
 * mm; all holds rise (or stand still) with it, all rates fall. In words: {@code
 * docs/models/burnout.md}.
 */
interface BinderRules {

  /** The rules for an investment whose binder is known. */
  static BinderRules of(Investment investment) {
    return investment.isPhosphateBonded() ? new PhosphateRules() : new GypsumRules();
  }

  /** A temperature or a rate with its reason. */
  record Reasoned<T>(T value, Draft.Why why) {}

  /** A rest between drying and the top. */
  record Rest(String purpose, Reasoned<Temperature> target, Reasoned<Duration> hold) {}

  /** e.g. "gypsum-bonded". */
  String bonded();

  // ---- water

  /** Where the mould dries. */
  Reasoned<Temperature> dry();

  /** Below this the mould counts as wet. */
  TemperatureRange wet();

  Duration dryHold(double millimetres, double kilnFactor);

  /** How {@link #dryHold} comes about, in one sentence, and the range of practice. */
  Draft.Why dryHoldWhy();

  /** Whether the drying hold goes on until the last of the free water has gone. */
  boolean driesThrough();

  /** The least time between boiling and {@link #dryUpTo}, ramps counted, before we warn. */
  Duration leastDryTime(double millimetres);

  Temperature dryUpTo();

  // ---- rates

  Reasoned<HeatingRate> earlyRise(double millimetres);

  /** Rise above the inversion of cristobalite, through that of quartz. */
  Reasoned<HeatingRate> lateRise(double millimetres);

  /** The fast end of practice, where we warn. */
  HeatingRate fastestWetRise(double millimetres);

  HeatingRate fastestCristobaliteRise(double millimetres);

  HeatingRate fastestQuartzRise();

  Origin wetRiseOrigin();

  // ---- on the way up

  /** Rests between drying and the top, in order. */
  List<Rest> rests(double millimetres);

  /** Those of them that are hotter than where a mould dries: the others are part of its drying. */
  default List<Rest> restsAbove(Temperature dried, double millimetres) {
    return rests(millimetres).stream()
        .filter(rest -> rest.target().value().compareTo(dried) > 0)
        .toList();
  }

  // ---- the top

  Temperature top();

  Draft.Why topWhy();

  /** A burnout that stays below this is none. */
  Temperature leastTop();

  /** Never hotter than this. */
  Temperature ceiling();

  /** What happens beyond the ceiling. */
  String beyondCeiling();

  Origin ceilingOrigin();

  /** From here on it is told, though not refused; empty if there is no such place. */
  Optional<Reasoned<Temperature>> topCaution();

  /** The top hold counts as such from here on. */
  Temperature topHoldFrom();

  Duration topHold(double millimetres);

  Draft.Why topHoldWhy();

  // ---- the pour

  /** Mould temperature of practice for an alloy whose name tells what it is. */
  Optional<UsualMould> pourOf(String alloy);

  /** What one must know about such moulds. */
  List<Caution> cautions();
}
