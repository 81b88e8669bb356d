package org.heatwright.app.cli;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.files.YamlText;
import org.heatwright.forecast.ForecastTrace;

/** A forecast's curves as CSV (RFC 4180). */
final class Trace {

  /** Its columns before those of the work. */
  static final String HEADER = "time_s,setpoint_c,chamber_low_c,chamber_c,chamber_high_c,power_w";

  private static final Pattern PLACE = Pattern.compile("mould (\\d+) (.+)");
  private static final double THOUSANDTHS = 1000;

  private Trace() {}

  static String csv(ForecastTrace trace) {
    List<String> places = trace.workNames();
    StringBuilder out = new StringBuilder(HEADER);
    places.forEach(place -> out.append(',').append(column(place)));
    out.append("\r\n");
    double[][] columns = new double[6 + places.size()][];
    columns[0] = trace.seconds();
    columns[1] = trace.setpointCelsius();
    columns[2] = trace.lowCelsius();
    columns[3] = trace.medianCelsius();
    columns[4] = trace.highCelsius();
    columns[5] = trace.powerWatts();
    for (int i = 0; i < places.size(); i++) {
      columns[6 + i] = trace.workCelsius(places.get(i));
    }
    for (int row = 0; row < trace.size(); row++) {
      for (int column = 0; column < columns.length; column++) {
        double value = Math.rint(columns[column][row] * THOUSANDTHS) / THOUSANDTHS;
        out.append(column == 0 ? "" : ",").append(YamlText.number(value));
      }
      out.append("\r\n");
    }
    return out.toString();
  }

  /** "mould 1 centre" is work_centre_c, "mould 2 mid-radius" is work_2_mid_radius_c. */
  private static String column(String place) {
    Matcher matcher = PLACE.matcher(place);
    String name = place;
    if (matcher.matches()) {
      name =
          matcher.group(1).equals("1")
              ? matcher.group(2)
              : matcher.group(1) + "_" + matcher.group(2);
    }
    return "work_" + name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_") + "_c";
  }
}
