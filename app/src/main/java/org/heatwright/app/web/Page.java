package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the page shows, already in words: the templates only lay it out.
 *
 * @param clock the bench's time when the page was made, in words
 * @param choices what is chosen and what could be
 * @param errors field name to one sentence that stands beside the field
 * @param refusal why there is no plan: one sentence; empty where there is one
 * @param plan the walk from schedule to card
 * @param readback the blind check, when the person is at it: then the plan is not shown
 * @param shelf what was kept
 * @param bringing a file that a person is bringing
 * @param scan a card's code that a person is bringing
 */
public record Page(
    String clock,
    Choosing choices,
    Map<String, String> errors,
    Optional<String> refusal,
    Optional<Plan> plan,
    Optional<Reading> readback,
    Shelf shelf,
    Bringing bringing,
    Scan scan) {

  public Page {
    errors = Map.copyOf(errors);
  }

  Page with(Bringing newBringing) {
    return new Page(clock, choices, errors, refusal, plan, readback, shelf, newBringing, scan);
  }

  Page with(Scan newScan) {
    return new Page(clock, choices, errors, refusal, plan, readback, shelf, bringing, newScan);
  }

  /** The sentence beside a field, empty where the field is fine. */
  public String error(String field) {
    return errors.getOrDefault(field, "");
  }

  /**
   * The choices as the form shows them.
   *
   * @param works names on the shelf; likewise kilns, keypads
   * @param readyBy true: {@code at} is when the work must be ready; false: when heat begins
   * @param at local date and time as {@code yyyy-MM-ddTHH:mm}
   * @param press when a person presses start, likewise
   * @param kiln the chosen kiln's name; empty where there is none
   * @param known address of what is known of it
   * @param slots address of what is in the slots of its keypad
   * @param zone the kiln's time zone in words
   * @param query the whole state of the page as a query string: the deep link
   * @param sealed the same in one word that shows no value
   * @param notes what was put aside or taken as usual, in sentences
   */
  public record Choosing(
      List<Option> works,
      List<Option> kilns,
      List<Option> keypads,
      String slot,
      boolean readyBy,
      String at,
      String press,
      String kiln,
      String known,
      String slots,
      String zone,
      String editsOf,
      String query,
      String sealed,
      List<String> notes) {}

  /** One entry of a list to choose from. */
  public record Option(String name, boolean chosen) {}

  /**
   * One planned firing.
   *
   * @param outcomes what happens in the piece; empty where that is told elsewhere
   * @param piece a piece on its own clock, where it goes in and out of a hot kiln
   * @param moulds whether moulds are in it, with a page of their own
   * @param found what a person may find when the kiln is opened
   */
  public record Plan(
      Answer answer,
      CurveFigure curve,
      List<Row> rows,
      List<Remark> findings,
      List<Outcome> outcomes,
      Optional<CurveFigure> piece,
      boolean moulds,
      List<String> cautions,
      List<String> found,
      Optional<Keying> keying,
      Taking taking) {}

  /**
   * One thing that the firing does to the piece.
   *
   * @param severity a finding's word where there is something to act on, else empty
   */
  public record Outcome(
      String what, String value, String meaning, String severity, String source) {}

  /**
   * What now, when next, how sure.
   *
   * @param lead e.g. "Ready"
   * @param figure e.g. "08:40 to 09:05"
   * @param day e.g. "Thursday 3 December"
   * @param facts the lines under it: label and sentence
   * @param worst the worst finding's severity word and sentence, if it must not be overlooked
   * @param sketch true while only one draw stands behind it
   */
  public record Answer(
      String lead,
      String figure,
      String day,
      List<Fact> facts,
      Optional<Remark> worst,
      boolean sketch) {}

  /**
   * The answer as it stands on the page.
   *
   * @param kiln the kiln's name
   * @param known address of what is known of it
   */
  public record Answered(Answer answer, String kiln, String known) {}

  /** A label and what it says. */
  public record Fact(String label, String text) {}

  /**
   * One segment.
   *
   * @param number 1-based
   * @param purpose why it is there, e.g. "dry"
   * @param expect when the display reaches its target and when its hold ends, in a sentence
   */
  public record Row(
      int number,
      String purpose,
      Field rate,
      Field target,
      Field hold,
      String expect,
      List<Why> reasons) {}

  /**
   * An editable value.
   *
   * @param name of the form field, e.g. "rate2"
   * @param label for people, e.g. "Rate of segment 2"
   * @param value as typed or composed
   * @param composed what the rules gave
   * @param unit e.g. "°C/h"
   */
  public record Field(String name, String label, String value, String composed, String unit) {
    public boolean edited() {
      return !value.equals(composed);
    }
  }

  /** Why a value is what it is. */
  public record Why(String what, String value, String rule, String range, String source) {}

  /**
   * A finding.
   *
   * @param severity "stop", "warn" or "note"
   * @param where e.g. "segment 2", or empty
   */
  public record Remark(String severity, String where, String message, String source) {}

  /**
   * How to key it in.
   *
   * @param fits false if it must not be keyed: then {@code told} says why
   * @param told every rounding and refusal
   * @param takes how long by hand, in words
   * @param takesSource where that is from
   * @param check figures the display must agree with
   * @param before what the slot register says of the slot, gravest first
   * @param slots address of the register
   * @param roles who can say that they keyed it
   * @param slips how likely it is that a slip stays; empty if it must not be keyed
   * @param slipsSource where that is from
   */
  public record Keying(
      String keypad,
      String slot,
      String unit,
      boolean fits,
      List<String> told,
      List<Step> steps,
      String takes,
      String takesSource,
      List<Fact> check,
      List<Remark> before,
      String slots,
      List<String> roles,
      String slips,
      String slipsSource) {

    /** Whether its keys are known: a stand-in has values to key, and no keys. */
    public boolean described() {
      return !keypad.equals(StartDesk.NOT_DESCRIBED);
    }
  }

  /** One step at the keypad. */
  public record Step(
      int number, String prompt, String press, String before, String after, String meaning) {}

  /**
   * What a person takes away: the moments to act, the card and the calendar.
   *
   * @param keyable whether there is a program to start
   */
  public record Taking(List<Fact> moments, boolean keyable) {}

  /**
   * The blind check.
   *
   * @param keypad the keypad's name
   * @param slot the slot it shows, as typed; likewise {@code shown}
   * @param sign the unit sign on the display as chosen; empty where this keypad shows none
   * @param unit what settles the unit of a keypad that can be switched
   * @param verdict the answer, once there is one
   * @param roles who can read it back
   * @param role the chosen one; empty if nothing is to be kept
   * @param slots address of the slot register
   * @param kept what the register says now; empty if nothing was kept
   */
  public record Reading(
      String keypad,
      Ask slot,
      Optional<String> sign,
      List<Ask> shown,
      Optional<ColdKiln> unit,
      Optional<Verdict> verdict,
      List<String> roles,
      String role,
      String slots,
      String kept) {

    Reading with(String newKept) {
      return new Reading(keypad, slot, sign, shown, unit, verdict, roles, role, slots, newKept);
    }
  }

  /**
   * The answer of the blind check.
   *
   * @param right true if everything that the review shows is as planned
   * @param head in a few words
   * @param correction the one thing to do next
   * @param more what else was found, and what this check cannot show
   * @param figures check figures: planned beside shown
   */
  public record Verdict(
      boolean right, String head, String correction, List<String> more, List<Fact> figures) {}

  /** A cold kiln's reading beside a thermometer's, as typed. */
  public record ColdKiln(
      boolean overnight,
      String display,
      String thermometer,
      String thermometerUnit,
      String remark) {}

  /**
   * One question of the blind check.
   *
   * @param name of the form field
   * @param label what the display marks it with, or where it stands
   * @param value as typed
   * @param mark "right", "wrong" or empty before the answer
   * @param remark what is wrong with it, in words; empty where nothing is
   * @param digits whether digits with a point or colon are all that it can need
   */
  public record Ask(
      String name, String label, String value, String mark, String remark, boolean digits) {}

  /** What was kept: cards and schedules. */
  public record Shelf(List<Kept> cards, List<Kept> schedules) {}

  /** Something that was kept, with the address it can be fetched from. */
  public record Kept(String name, String when, String address) {}

  /**
   * A file that a person brings.
   *
   * @param kind "work", "kiln" or "keypad"
   * @param error why it is not on the shelf, one sentence; empty where nothing is wrong
   * @param example true if the text is ours, to start from
   */
  public record Bringing(String kind, String name, String text, String error, boolean example) {
    static Bringing nothing() {
      return new Bringing("kiln", "", "", "", false);
    }

    static Bringing done(String kind, String name) {
      return new Bringing(kind, name, "", "", false);
    }

    static Bringing wrong(String kind, String name, String text, String error) {
      return new Bringing(kind, name, text, error, false);
    }

    /** True if somebody should see it without asking. */
    public boolean open() {
      return example || !error.isEmpty();
    }
  }

  /**
   * A card's code that a person is bringing.
   *
   * @param text as pasted
   * @param error why the schedule is not on the shelf, one sentence; empty where nothing is wrong
   */
  public record Scan(String text, String error) {
    static Scan nothing() {
      return new Scan("", "");
    }
  }
}
