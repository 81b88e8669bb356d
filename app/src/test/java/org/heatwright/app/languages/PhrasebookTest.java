package org.heatwright.app.languages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.heatwright.work.Found;
import org.heatwright.work.causes.Cause;
import org.heatwright.work.causes.CauseBook;
import org.heatwright.work.causes.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The German book: whole, even on both sides, and what it makes of texts. */
class PhrasebookTest {

  private static final Phrasebook BOOK = Phrasebook.of(Language.GERMAN);

  /** Words that no German sentence has; titles of English books and codes are left out. */
  private static final Pattern ENGLISH =
      Pattern.compile("\\b(?:the|with|and|of|from|which|this|that|are|not|is|by|your|it)\\b");

  private static final Pattern TITLES =
      Pattern.compile(
          "The Annealing of Glass|Concepts and Technology|Theory of Elasticity|Thermophysical"
              + " Properties of Matter|Fundamentals of Heat and Mass"
              + " Transfer|Analysis of Bi-Metal|Science of Dental|Handbook of Chemistry and"
              + " Physics|Incropera and DeWitt|craft of granulation|Manual on the Use of"
              + " Thermocouples in|Theory and Practice of|Encyclopedia of Glass|History and"
              + " Culture|<stream end>.*");

  @Test
  void bothSidesHaveTheSameHoles() {
    for (Phrase phrase : BOOK.phrases()) {
      assertThat(Phrase.holesOf(phrase.other()))
          .as("%s: %s", phrase.where(), phrase.english())
          .isEqualTo(Phrase.holesOf(phrase.english()));
    }
  }

  /** Words emphasised before a sentence that begins with a name are no part of the name. */
  @Test
  void aNameHoldsNoEmphasisedWords() {
    Phrase phrase = Phrase.of("{0!} can reach {1}", "{0!} kommt auf {1}", "here");
    assertThat(phrase.heldBy("Buoy can reach 320 °C")).isPresent();
    assertThat(phrase.heldBy("<1>warn</1> <2>segment 1</2> Buoy can reach 320 °C")).isEmpty();
  }

  @Test
  void noPhraseStandsTwice() {
    Set<String> seen = new HashSet<>();
    List<String> twice = new ArrayList<>();
    for (Phrase phrase : BOOK.phrases()) {
      boolean script = phrase.where().startsWith(Phrasebook.SCRIPTS);
      String shape = phrase.english().replaceAll("\\{\\d+[#@!]?\\}", "{}");
      if (!script && !seen.add(shape)) {
        twice.add(phrase.where() + ": " + phrase.english());
      }
    }
    assertThat(twice).isEmpty();
  }

  @Test
  void noEnglishIsLeftInTheGerman() {
    List<String> left = new ArrayList<>();
    for (Phrase phrase : BOOK.phrases()) {
      String bare = TITLES.matcher(phrase.other()).replaceAll("");
      if (ENGLISH.matcher(bare).find()) {
        left.add(phrase.where() + ": " + phrase.other());
      }
    }
    assertThat(left).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          12.5 °C                             | 12,5 °C
          Schedule burnout-100-mm-two-sizes, °C: | Brennkurve burnout-100-mm-two-sizes, °C:
          Tue 1 Dec 10:00 (09:22 to 09:59), mould 2 last | Di 1. Dez. 10:00 (09:22 bis 09:59), Küvette 2 zuletzt
          firing of fine silver clay          | Brand von Feinsilberton
          Tue 1 Dec, 10:00                    | Di 1. Dez., 10:00
          09:22 to 09:59                      | 09:22 bis 09:59
          Thursday 3 December 2026            | Donnerstag 3. Dezember 2026
          Work ready                          | Arbeit fertig
          Slot 3 is needed: do not overwrite it | Slot 3 is needed: do not overwrite it
          good, incomplete, gas pores         | gut, unvollständig, Gasporen
          Read slot 12 without a plan         | Platz 12 ohne Plan ablesen
          Range: 150 to 200 °C/h              | Bereich: 150 bis 200 °C/h
          Source: read: bench table           | Quelle: gelesen: Werkstatttabelle
          Segment 3: 730 °C meant (1346 °F): keyed in °F it is taken, and the kiln goes to 387.8 °C, which is 342 °C too cold. | Segment 3: 730 °C gemeint (1346 °F): in °F eingetastet wird es angenommen, und der Ofen geht auf 387,8 °C, das ist 342 °C zu kalt.
          The metal begins to melt from about 962 °C, 38 K above the hottest that is likely. | Das Metall beginnt ab etwa 962 °C zu schmelzen, 38 K über dem, was wahrscheinlich am heißesten wird.
          wax at your own 0.95 g/cm³.         | Wachs mit eigenen 0,95 g/cm³.
          Look now                            | Nachsehen
          do not enter                        | gesperrt
          Energy                              | Energie
          Test l-one of 29 November 2026 never ran the elements at full power for ten minutes on the way to a target, and so tells little of them. | Test l-one vom 29. November 2026 hat die Heizelemente auf dem Weg zu einem Ziel nie zehn Minuten lang mit voller Leistung betrieben und sagt darum wenig über sie.
          The timer is for pieces that go in and out of a hot kiln: for enamel. | Die Stückuhr ist für Stücke, die in den heißen Ofen hinein und wieder heraus kommen: für Email.
          01:30 Sunday 28 March does not exist in Europe/London: the clocks go forward from 01:00 to 02:00; write a time that the clock has shown. | 01:30 Sonntag 28. März gibt es in Europe/London nicht: die Uhren gehen von 01:00 auf 02:00 vor; eine Zeit angeben, die die Uhr gezeigt hat.
          01:30 Sunday 25 October comes twice in Europe/London, because the clocks go back. Taken as the first (UTC+01:00). | 01:30 Sonntag 25. Oktober kommt in Europe/London zweimal vor, weil die Uhren zurückgehen. Genommen wird das erste (UTC+01:00).
          “May” of 2 May 2026 and “Again” of 30 November 2026 are the same log: tick one of the two. | „May“ vom 2. Mai 2026 und „Again“ vom 30. November 2026 sind dasselbe Protokoll: nur eines von beiden ankreuzen.
          The log: it is that of “May”, 2 May 2026, which lies beside this kiln already; put that one away on the shelf first if you mean to bring it anew. | Protokoll: es ist das von „May“, 2. Mai 2026, und liegt schon neben diesem Ofen; zuerst jenes auf dem Regal weglegen, wenn es neu gebracht werden soll.
          Sun 25 Oct, 01:30 (2nd)             | So 25. Okt., 01:30 (2.)
          Segment 2 of 4: on the way to 400 °C, there 16:50 at the earliest; it may never get there. | Segment 2 von 4: auf dem Weg zu 400 °C, dort frühestens 16:50; vielleicht kommt er nie dorthin.
          Segment 2 of 4: on the way to 400 °C, there 16:50 at the earliest; most likely it never gets there. | Segment 2 von 4: auf dem Weg zu 400 °C, dort frühestens 16:50; höchstwahrscheinlich kommt er nie dorthin.
          Segment 2 of 4: on the way to 400 °C; most likely it never gets there. | Segment 2 von 4: auf dem Weg zu 400 °C; höchstwahrscheinlich kommt er nie dorthin.
          Segment 2 of 4: on the way to 400 °C; it may not get there before the program goes on. | Segment 2 von 4: auf dem Weg zu 400 °C; vielleicht kommt er nicht dorthin, bevor das Programm weitergeht.
          Segment 2 of 4: holding 400 °C until 18:50 at the earliest, if it got there. | Segment 2 von 4: hält 400 °C bis frühestens 18:50, wenn er dorthin gekommen ist.
          First mould may be drawn: 10:00 at the earliest. | Erste Küvette darf gezogen werden: frühestens 10:00.
          First mould may be drawn: Thu 3 Dec 10:00 at the earliest. | Erste Küvette darf gezogen werden: frühestens Do 3. Dez. 10:00.
          Reaches it Wed 2 Dec 16:50; moves on 18:50. | Erreicht es Mi 2. Dez. 16:50; weiter um 18:50.
          """)
  void textsAreSaid(String english, String german) {
    assertThat(BOOK.said(english)).isEqualTo(german);
  }

  @Test
  void whatIsNotKnownIsToldAndStays() {
    List<String> unknown = new ArrayList<>();
    assertThat(BOOK.said("Nothing is hot. A sentence nobody wrote down.", unknown::add))
        .isEqualTo("Nichts ist heiß. A sentence nobody wrote down.");
    assertThat(unknown).containsExactly("A sentence nobody wrote down.");
  }

  /** Whatever may be behind any fault, with its tests, its change and its source. */
  @Test
  void everyCauseIsSaid() {
    List<String> unknown = new ArrayList<>();
    for (String kind : CauseBook.kinds()) {
      for (Found fault : CauseBook.faults(kind)) {
        for (Suspect suspect : CauseBook.suspects(kind, fault.code())) {
          Cause cause = suspect.cause();
          BOOK.said(cause.words(), unknown::add);
          cause.trials().forEach(trial -> BOOK.said(trial.words(), unknown::add));
          BOOK.said(cause.change().words(), unknown::add);
          cause.caution().ifPresent(caution -> BOOK.said(caution, unknown::add));
          BOOK.said(cause.origin().words(), unknown::add);
        }
      }
    }
    assertThat(unknown).isEmpty();
  }

  @Test
  void whatPeopleHaveNamedStays() {
    assertThat(BOOK.with(Set.of("Harbour burnout")).said("Harbour burnout in Harbour burnout"))
        .isEqualTo("Harbour burnout in Harbour burnout");
    List<String> unknown = new ArrayList<>();
    BOOK.said("Harbour burnout", unknown::add);
    assertThat(unknown).containsExactly("Harbour burnout");
  }

  @Test
  void theLanguageIsTheFirstThatIsSpoken() {
    assertThat(Language.preferred("")).isEqualTo(Language.ENGLISH);
    assertThat(Language.preferred("de-CH")).isEqualTo(Language.GERMAN);
    assertThat(Language.preferred("fr,de;q=0.5,en;q=0.8")).isEqualTo(Language.ENGLISH);
    assertThat(Language.preferred("de;q=0,en")).isEqualTo(Language.ENGLISH);
    assertThat(Language.preferred("~~")).isEqualTo(Language.ENGLISH);
  }

  /** Words, links in them, what is read aloud; what is marked stays. */
  @Test
  void aPageIsTranslatedWhereItIsRead() {
    List<String> unknown = new ArrayList<>();
    PageTranslator german = new PageTranslator(Language.GERMAN, BOOK, unknown::add);
    assertThat(
            german.part(
                "<p>From then on <a href=\"/\">Now</a> says what the display should show"
                    + " and what to do when.</p>"))
        .isEqualTo(
            "<p>Von da an sagt <a href=\"/\">Jetzt</a>, was die Anzeige zeigen sollte und was wann"
                + " zu tun ist.</p>");
    assertThat(german.part("<nav aria-label=\"Places\"><b translate=\"no\">Kilns</b> Kilns</nav>"))
        .isEqualTo("<nav aria-label=\"Orte\"><b translate=\"no\">Kilns</b> Öfen</nav>");
    assertThat(
            german.part(
                "<input data-number=\"1\" value=\"12.5\"><input type=\"range\" value=\"1.5\">"))
        .isEqualTo("<input data-number=\"1\" value=\"12,5\"><input type=\"range\" value=\"1.5\">");
    assertThat(german.part("<p title=\"Kilns\">&lt;b&gt; &amp; 12.5</p>"))
        .isEqualTo("<p title=\"Öfen\">&lt;b&gt; &amp; 12,5</p>");
    assertThat(unknown).isEmpty();
  }
}
