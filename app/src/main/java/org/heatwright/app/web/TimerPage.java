package org.heatwright.app.web;

import java.util.List;

/**
 * The piece timer: one piece after another in the hot kiln, each counted from the door.
 *
 * @param clock the time at the bench
 * @param job what is fired
 * @param kiln where
 * @param back address of where it was opened from, and its words
 * @param backWords likewise
 * @param asks field of the address that names what is timed: plan or firing
 * @param asked its value
 * @param unit of the display
 * @param heat what the display says before the door, as typed; empty for the schedule's own
 * @param heatError what is wrong with it
 * @param working for what heat this is worked out, in words
 * @param cautions what can hurt the piece at this heat
 * @param stages what is to be seen when, in words: for who has no script
 * @param keeps where what is counted is kept, a sentence
 * @param json what the script needs: {@link TimerJson}
 */
public record TimerPage(
    String clock,
    String job,
    String kiln,
    String back,
    String backWords,
    String asks,
    String asked,
    String unit,
    String heat,
    String heatError,
    String working,
    List<Page.Remark> cautions,
    List<Page.Fact> stages,
    String keeps,
    String json) {}
