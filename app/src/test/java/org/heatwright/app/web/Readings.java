package org.heatwright.app.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;

/** What somebody types who reads back a display. */
final class Readings {

  private Readings() {}

  /** What the display shows of the plan itself, in slot 3 of Tern, its unit settled. */
  static Map<String, String> right(Firing firing) {
    FittedProgram program = firing.program();
    Map<String, String> typed = new LinkedHashMap<>();
    for (Page.Ask ask : ReadbackDesk.ask(firing).shown()) {
      for (KeyedValue value : program.values()) {
        boolean unused = value.kind() == KeyedValue.Kind.END;
        String place = unused ? "segment " + value.segment() + ", first value" : value.place();
        if (ask.label().endsWith(place)) {
          typed.put(ask.name(), value.digits());
        }
      }
    }
    typed.put("shown" + program.values().size(), "End");
    typed.put("overnight", "on");
    typed.put("cold-display", "19");
    typed.put("cold-thermometer", "19");
    typed.put("shown-slot", "3");
    typed.put("role", "student");
    return typed;
  }
}
