package org.heatwright.app.files;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/**
 * A schedule as one short line of text: what the code on a card holds. Example:
 *
 * <pre>HEATWRIGHT:1:HARBOUR-BURNOUT:C:120/150/120*F/500:0:OFF:98AAFFB4</pre>
 *
 * <p>Eight fields, a colon between them: {@code HEATWRIGHT}, the version {@code 1}, name, unit
 * ({@code C} or {@code F}), segments, start delay in minutes, at end ({@code OFF} or {@code KEEP}),
 * check sum. The text has only characters of the QR code's alphanumeric mode (digits, capitals,
 * space, {@code $%*+-./:}), five and a half bits each.
 *
 * <p><b>Name:</b> small letters a to z stand as capitals, a capital has {@code $} before it, a
 * space is {@code +}; digits, {@code -} and {@code .} stand for themselves; of anything else each
 * byte of its UTF-8 is {@code %} and two hexadecimal digits.
 *
 * <p><b>Segments:</b> {@code *} between them, each {@code rate/target/hold}: degrees of the unit an
 * hour or {@code F} for fastest, degrees of the unit, whole minutes; a hold of none is left out
 * with its stroke. A number that is not exact in at most six decimals of the unit has {@code K}
 * before it and is in K/h or °C, in full.
 *
 * <p><b>Check sum:</b> CRC-32 of the bytes before the last colon, as ISO 3309 has it, eight
 * hexadecimal digits.
 *
 * <p>Reading takes small letters for capitals and leaves out blanks and line ends, so that a text
 * may have been typed or wrapped by a mail; it accepts what a schedule file may hold and nothing
 * else. Docs: {@code docs/schema/schedule-code.md}.
 */
public final class ScheduleCode {

  /** How every version begins. */
  public static final String MARK = "HEATWRIGHT:";

  private static final String VERSION = "1";
  private static final int FIELDS = 8;
  private static final int LONGEST = 100_000;

  /** 999:59, as in files. */
  private static final int LONGEST_MINUTES = 999 * 60 + 59;

  private static final String NUMBER = "(\\d{1,7}(?:\\.\\d{1,6})?|K-?\\d{1,7}(?:\\.\\d{1,40})?)";
  private static final Pattern SEGMENT =
      Pattern.compile("(?:(F)|" + NUMBER + ")/" + NUMBER + "(?:/(\\d{1,5}))?");

  private static final Pattern NAME_PART = Pattern.compile("%[0-9A-F]{2}|\\$[A-Z]|[A-Z0-9.+-]");

  private ScheduleCode() {}

  /**
   * The schedule as text; reads back equal.
   *
   * @throws IllegalArgumentException with a sentence, for a schedule that no schedule file may hold
   */
  public static String write(Schedule schedule) {
    StringBuilder out = new StringBuilder(MARK).append(VERSION).append(':');
    out.append(name(schedule.name())).append(':').append(schedule.unit().letter()).append(':');
    for (int i = 0; i < schedule.segments().size(); i++) {
      out.append(i == 0 ? "" : "*").append(segment(schedule.segments().get(i), schedule.unit()));
    }
    out.append(':').append(schedule.startDelay().toMinutes());
    out.append(':').append(schedule.atEnd() == AtEnd.KEEP ? "KEEP" : "OFF");
    String text = out + ":" + checkSum(out.toString());
    try {
      if (read(text, "code").equals(schedule)) {
        return text;
      }
    } catch (InputException beyondAnyFile) {
      // told below
    }
    throw new IllegalArgumentException(
        "The schedule '%s' holds what no schedule file may hold, so there is no code of it."
            .formatted(schedule.name()));
  }

  /** Whether a text is meant to be a code of ours, of whatever version. */
  public static boolean isOurs(String text) {
    return cleaned(text).startsWith(MARK);
  }

  /**
   * The schedule that a text holds.
   *
   * @param from what the text was found in, for complaints
   * @throws InputException in one sentence: not ours, of another version, damaged, or wrong
   */
  public static Schedule read(String text, String from) {
    if (text.length() > LONGEST) {
      throw InputException.in(
          from,
          "the text has %d characters; a schedule's code has far fewer.".formatted(text.length()));
    }
    String code = cleaned(text);
    if (!code.startsWith(MARK)) {
      throw InputException.in(
          from,
          "this is not a schedule's code; expected a text that begins with \"%s%s:\"."
              .formatted(MARK, VERSION));
    }
    String[] fields = code.split(":", -1);
    if (fields[1].matches("\\d{1,9}") && !fields[1].equals(VERSION)) {
      throw InputException.in(
          from,
          "this code is of version %s and this Heatwright reads version %s; use the release that"
                  .formatted(fields[1], VERSION)
              + " wrote it.");
    }
    int last = code.lastIndexOf(':');
    if (fields.length != FIELDS || !checkSum(code.substring(0, last)).equals(fields[7])) {
      throw InputException.in(
          from,
          "the code is damaged or not whole (its check sum does not agree); take another picture, or"
              + " copy the text again from %s to the end.".formatted(MARK));
    }
    return new Reader(from).schedule(fields);
  }

  private static String cleaned(String text) {
    return text.replaceAll("[\\s\\uFEFF\\u00A0]+", "").toUpperCase(Locale.ROOT);
  }

  private static String checkSum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.UTF_8));
    return "%08X".formatted(sum.getValue());
  }

  // ---- writing

  private static String name(String name) {
    StringBuilder out = new StringBuilder();
    name.codePoints()
        .forEach(
            c -> {
              if (c >= 'a' && c <= 'z') {
                out.append((char) (c - 'a' + 'A'));
              } else if (c >= 'A' && c <= 'Z') {
                out.append('$').append((char) c);
              } else if (c == ' ') {
                out.append('+');
              } else if (c >= '0' && c <= '9' || c == '-' || c == '.') {
                out.append((char) c);
              } else {
                for (byte b : Character.toString(c).getBytes(StandardCharsets.UTF_8)) {
                  out.append("%%%02X".formatted(b & 0xff));
                }
              }
            });
    return out.toString();
  }

  private static String segment(Segment segment, TemperatureUnit unit) {
    String rate =
        segment
            .ramp()
            .rate()
            .map(r -> number(unit.value(r), unit.rate(unit.value(r)).equals(r), r.kelvinsPerHour()))
            .orElse("F");
    double degrees = unit.value(segment.target());
    String target =
        number(
            degrees,
            unit.temperature(degrees).equals(segment.target()),
            segment.target().celsius());
    long hold = segment.hold().toMinutes();
    return rate + "/" + target + (hold == 0 ? "" : "/" + hold);
  }

  private static String number(double inUnit, boolean exact, double kelvins) {
    return exact ? plain(inUnit) : "K" + plain(kelvins);
  }

  private static String plain(double value) {
    BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
    return decimal.signum() == 0 ? "0" : decimal.toPlainString();
  }

  // ---- reading

  /** Reads the fields of a text whose check sum agrees. */
  private record Reader(String from) {

    Schedule schedule(String[] fields) {
      TemperatureUnit unit =
          TemperatureUnit.ofLetter(fields[3]).orElseThrow(() -> wrong("unit", fields[3], "C or F"));
      List<Segment> segments = new ArrayList<>();
      for (String segment : fields[4].split("\\*", -1)) {
        segments.add(segment(segments.size() + 1, segment, unit));
      }
      ProgramLimits.beyond(segments)
          .ifPresent(
              beyond -> {
                throw InputException.in(
                    from,
                    "with segment %d of the code the program comes to %s; expected %s."
                        .formatted(beyond.segment(), beyond.what(), beyond.expected()));
              });
      AtEnd atEnd =
          switch (fields[6]) {
            case "OFF" -> AtEnd.OFF;
            case "KEEP" -> AtEnd.KEEP;
            default -> throw wrong("at end", fields[6], "OFF or KEEP");
          };
      String name = name(fields[2]);
      if (name.isBlank()) {
        throw wrong("name", fields[2], "at least one letter or digit");
      }
      return new Schedule(name, unit, segments, minutes("start delay", fields[5]), atEnd);
    }

    private Segment segment(int number, String text, TemperatureUnit unit) {
      String where = "segment " + number;
      Matcher parts = SEGMENT.matcher(text);
      if (!parts.matches()) {
        throw wrong(where, text, "rate/target/minutes, such as 150/730/120");
      }
      Ramp ramp =
          parts.group(1) != null
              ? Ramp.fastest()
              : Ramp.at(
                  value(
                      parts.group(2),
                      unit::rate,
                      TemperatureUnit.CELSIUS::rate,
                      () -> wrong(where, text, "a rate above zero")));
      if (ramp.rate().map(r -> unit.value(r) > ScheduleFile.MAX_RATE).orElse(false)) {
        throw wrong(
            where,
            text,
            "a rate of at most " + YamlText.number(ScheduleFile.MAX_RATE) + " an hour");
      }
      String range =
          "a target of 0 to %s °C".formatted(YamlText.number(ScheduleFile.MAX_TARGET_CELSIUS));
      var target =
          value(
              parts.group(3),
              unit::temperature,
              TemperatureUnit.CELSIUS::temperature,
              () -> wrong(where, text, range));
      if (target.celsius() < 0 || target.celsius() > ScheduleFile.MAX_TARGET_CELSIUS) {
        throw wrong(where, text, range);
      }
      String hold = parts.group(4);
      return new Segment(ramp, target, hold == null ? Duration.ZERO : minutes(where, hold));
    }

    private static <T> T value(
        String text,
        DoubleFunction<T> inUnit,
        DoubleFunction<T> inKelvins,
        Supplier<InputException> wrong) {
      try {
        return text.startsWith("K")
            ? inKelvins.apply(Double.parseDouble(text.substring(1)))
            : inUnit.apply(Double.parseDouble(text));
      } catch (IllegalArgumentException e) {
        throw wrong.get();
      }
    }

    private Duration minutes(String what, String text) {
      long minutes = text.matches("\\d{1,5}") ? Long.parseLong(text) : Long.MAX_VALUE;
      if (minutes > LONGEST_MINUTES) {
        throw wrong(
            what,
            text,
            "whole minutes, at most %s"
                .formatted(HourMinute.format(Duration.ofMinutes(LONGEST_MINUTES))));
      }
      return Duration.ofMinutes(minutes);
    }

    private String name(String text) {
      ByteBuffer bytes = ByteBuffer.allocate(2 * text.length() + 1);
      Matcher parts = NAME_PART.matcher(text);
      int at = 0;
      while (parts.find() && parts.start() == at) {
        at = parts.end();
        char first = text.charAt(parts.start());
        if (first == '%') {
          bytes.put((byte) Integer.parseInt(text.substring(parts.start() + 1, at), 16));
        } else if (first == '$') {
          bytes.put((byte) text.charAt(at - 1));
        } else if (first == '+') {
          bytes.put((byte) ' ');
        } else {
          bytes.put((byte) Character.toLowerCase(first));
        }
      }
      try {
        if (at == text.length()) {
          CharBuffer name = StandardCharsets.UTF_8.newDecoder().decode(bytes.flip());
          return name.toString();
        }
      } catch (CharacterCodingException e) {
        // told below
      }
      throw wrong("name", text, "letters, digits, and %XX for the bytes of anything else");
    }

    private InputException wrong(String what, String found, String expected) {
      String shown = found.length() > 40 ? found.substring(0, 40) + "…" : found;
      return InputException.in(
          from, "%s of the code is \"%s\"; expected %s.".formatted(what, shown, expected));
    }
  }
}
