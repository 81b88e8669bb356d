package org.heatwright.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lays out a page, whole or in the parts that the script swaps in. */
final class Pages {

  /** Parts of the page that follow from the choices; each is a template and an element's id. */
  private static final List<String> PARTS =
      List.of("answer", "curve", "schedule", "findings", "keying", "taking", "slotsof");

  private final TemplateEngine engine =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, null, "org.heatwright.app.web.pages");

  private final String banner;

  Pages() {
    this(Optional.empty());
  }

  /**
   * @param demo as in {@link BenchSettings}: what stands over every page of a demo studio
   */
  Pages(Optional<String> demo) {
    this.banner =
        demo.map(
                own ->
                    "<aside class=\"demo-banner\" aria-label=\"Demo studio\">Demo studio: everything here is invented, and gone when Heatwright ends."
                        + (own.isEmpty()
                            ? ""
                            : " <a href=\"%sstart\">Back to your own bench</a>".formatted(own))
                        + "</aside>\n")
            .orElse("");
  }

  String start(StartPage page) {
    return laidOut("start", page);
  }

  String whole(Page page) {
    return part("page", page);
  }

  String answered(Page.Answered page) {
    return laidOut("answered", page);
  }

  String now(NowPage page) {
    return laidOut("now", page);
  }

  String stillHot(StillHotPage page) {
    return laidOut("stillhot", page);
  }

  String trouble(TroublePage page) {
    return laidOut("trouble", page);
  }

  String firings(FiringsPage page) {
    return laidOut("firings", page);
  }

  String heatwork(HeatworkPage page) {
    return laidOut("heatwork", page);
  }

  String pieces(PiecesPage page) {
    return laidOut("pieces", page);
  }

  String kilns(KilnsPage page) {
    return laidOut("kilns", page);
  }

  String values(ValuesPage page) {
    return laidOut("values", page);
  }

  String materials(MaterialsPage page) {
    return laidOut("materials", page);
  }

  String help(HelpPage page) {
    return laidOut("help", page);
  }

  String firing(FiringPage page) {
    return laidOut("firing", page);
  }

  String waiting(WaitingPage page) {
    return laidOut("waiting", page);
  }

  String shelf(ShelfPage page) {
    return laidOut("onshelf", page);
  }

  String offline(OfflinePage page) {
    return laidOut("offline", page);
  }

  String timer(TimerPage page) {
    return laidOut("timer", page);
  }

  String ask(AskPage page) {
    return laidOut("intake", page);
  }

  String inside(InsidePage page) {
    return laidOut("inside", page);
  }

  String pour(PourPage page) {
    return laidOut("pour", page);
  }

  String describe(DescribePage page) {
    return laidOut("describe", page);
  }

  String kiln(KilnPage page) {
    return laidOut("kiln", page);
  }

  String slots(SlotsPage page) {
    return laidOut("slots", page);
  }

  String unknownSlot(SlotsPage.Unknown page) {
    return laidOut("slotread", page);
  }

  /** Element id to its inside. */
  Map<String, String> parts(Page page) {
    Map<String, String> parts = new LinkedHashMap<>();
    PARTS.forEach(name -> parts.put(name, part(name, page)));
    return parts;
  }

  private String part(String name, Page page) {
    return laidOut(name, page);
  }

  private String laidOut(String name, Record page) {
    StringOutput output = new StringOutput();
    engine.render(name + ".jte", Map.of("page", page), output);
    return bannered(output.toString());
  }

  /** A page with what stands over every page of a demo studio; else as it is. */
  String bannered(String laidOut) {
    int body = banner.isEmpty() ? -1 : laidOut.indexOf("<body");
    if (body < 0) {
      return laidOut;
    }
    int skip = laidOut.indexOf("class=\"skip\"", body); // stays the first thing on the page
    int inside = skip < 0 ? laidOut.indexOf('>', body) + 1 : laidOut.indexOf("</a>", skip) + 4;
    return laidOut.substring(0, inside) + "\n" + banner + laidOut.substring(inside);
  }
}
