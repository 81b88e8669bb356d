package org.heatwright.app.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class PlotsTest {

  private static final Map<String, Figure> FIGURES =
      Map.of(
          "firing", FiringPlot.of(Examples.logged()),
          "firing-before", FiringPlot.of(Examples.before()),
          "firing-by-hand", FiringPlot.of(Examples.byHandInFahrenheit()),
          "residuals", ResidualPlot.of(Examples.logged()),
          "residuals-by-hand", ResidualPlot.of(Examples.byHandInFahrenheit()),
          "learned", Examples.learned(),
          "health", Examples.health());

  static Stream<Arguments> figures() {
    return FIGURES.entrySet().stream().map(e -> Arguments.of(e.getKey(), e.getValue()));
  }

  private static Document parse(String xml) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> all(Document document, String name) {
    NodeList nodes = document.getElementsByTagName(name);
    List<Element> all = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      all.add((Element) nodes.item(i));
    }
    return all;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("figures")
  void isWellFormedAndSaysWhatItShows(String name, Figure figure) throws Exception {
    String svg = Svg.file(figure);
    Document document = parse(svg);
    Element root = document.getDocumentElement();
    assertThat(root.getAttribute("role")).isEqualTo("img");
    for (String id : root.getAttribute("aria-labelledby").split(" ", -1)) {
      assertThat(svg).contains("id=\"" + id + "\"");
    }
    assertThat(all(document, "title").get(0).getTextContent()).isEqualTo(figure.title());
    assertThat(all(document, "desc").get(0).getTextContent()).isEqualTo(figure.told());
    assertThat(svg).doesNotContain("NaN", "Infinity", "null", "url(", "href");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("figures")
  void everyWordLiesInsideItsFrameAndNoneOnAnother(String name, Figure figure) throws Exception {
    for (String svg :
        List.of(
            Svg.file(figure),
            Svg.inPage(figure, "one", Figure.Size.WIDE),
            Svg.inPage(figure, "two", Figure.Size.NARROW))) {
      Document document = parse(svg);
      String[] view = document.getDocumentElement().getAttribute("viewBox").split(" ", -1);
      double width = Double.parseDouble(view[2]);
      double height = Double.parseDouble(view[3]);
      List<double[]> boxes = new ArrayList<>();
      List<String> words = new ArrayList<>();
      for (Element text : all(document, "text")) {
        double[] box = box(text);
        String said = text.getTextContent();
        assertThat(box[0]).as("left of “%s”", said).isGreaterThanOrEqualTo(0);
        assertThat(box[1]).as("right of “%s”", said).isLessThanOrEqualTo(width);
        assertThat(box[2]).as("top of “%s”", said).isGreaterThanOrEqualTo(0);
        assertThat(box[3]).as("foot of “%s”", said).isLessThanOrEqualTo(height);
        for (int i = 0; i < boxes.size(); i++) {
          double[] other = boxes.get(i);
          boolean apart =
              box[0] >= other[1] || box[1] <= other[0] || box[2] >= other[3] || box[3] <= other[2];
          assertThat(apart).as("“%s” and “%s” are apart", said, words.get(i)).isTrue();
        }
        boxes.add(box);
        words.add(said);
      }
      assertThat(words).isNotEmpty();
    }
  }

  /** Left, right, top of the capitals, baseline. */
  private static double[] box(Element text) {
    double size = Double.parseDouble(text.getAttribute("font-size"));
    boolean bold = text.hasAttribute("font-weight");
    Canvas.Type type =
        Stream.of(Canvas.Type.values())
            .filter(t -> t.pixels() == size && t.bold() == bold)
            .findFirst()
            .orElseThrow();
    double wide = Letters.width(text.getTextContent(), type);
    double x = Double.parseDouble(text.getAttribute("x"));
    double left =
        switch (text.getAttribute("text-anchor")) {
          case "middle" -> x - wide / 2;
          case "end" -> x - wide;
          default -> x;
        };
    double baseline = Double.parseDouble(text.getAttribute("y"));
    return new double[] {left, left + wide, baseline - 0.73 * size, baseline};
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("figures")
  void thePictureIsAsLargeAsTheDrawingAndHasInk(String name, Figure figure) throws Exception {
    byte[] png = Png.of(figure);
    Path folder = Files.createDirectories(Path.of("target", "plots"));
    Files.write(folder.resolve(name + ".png"), png);
    Files.writeString(folder.resolve(name + ".svg"), Svg.file(figure));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    FigureDrawing drawing = new FigureDrawing(figure, Figure.Size.WIDE, true);
    assertThat(image.getWidth()).isEqualTo(Png.SCALE * drawing.width());
    assertThat(image.getHeight()).isEqualTo(Png.SCALE * drawing.height());
    long dark = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y++) {
        dark += (image.getRGB(x, y) & 0xff) < 0x60 ? 1 : 0;
      }
    }
    assertThat(dark).isGreaterThan(2000);
  }

  @Test
  void thePictureHasInkWhereTheMeasuredLineIs() throws Exception {
    Figure figure = FIGURES.get("firing");
    String svg = Svg.file(figure);
    Matcher line =
        Pattern.compile("class=\"l-ink\"[^>]*stroke-width=\"2.2\"[^>]* d=\"M([^\"]*)\"")
            .matcher(svg);
    assertThat(line.find()).isTrue(); // the legend's
    assertThat(line.find()).isTrue();
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(Png.of(figure)));
    String[] points = line.group(1).split("L", -1);
    assertThat(points.length).isGreaterThan(200);
    for (int i = 0; i < points.length; i += 20) {
      String[] place = points[i].split(" ", -1);
      int x = (int) (Png.SCALE * Double.parseDouble(place[0]));
      int y = (int) (Png.SCALE * Double.parseDouble(place[1]));
      assertThat(image.getRGB(x, y) & 0xff).as("ink at point %d", i).isLessThan(0x90);
    }
  }

  @Test
  void aLineHasAPlaceForEveryGapOfTheLog() throws Exception {
    var whole = Examples.readings(60, t -> 0);
    double[] seconds = new double[whole.size() - 30];
    double[] celsius = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      int from = i < 100 ? i : i + 30;
      seconds[i] = whole.second(from);
      celsius[i] = whole.celsius(from);
    }
    var points = FiringPlot.points(org.heatwright.learn.Readings.of(seconds, celsius));
    List<Layer> layers = WatchedFiring.seenLayers(points);
    assertThat(layers).hasSize(2);
    assertThat(((Layer.Line) layers.get(0)).points()).hasSize(100);
  }

  @Test
  void theDifferencesAreSeenMinusForecast() {
    var firing = Examples.byHandInFahrenheit();
    LogAgainstForecast compared = firing.compared().orElseThrow();
    // Nine kelvins were taken off and the reading rounded to a degree.
    assertThat(compared.differences())
        .allSatisfy(d -> assertThat(d.kelvins()).isCloseTo(-9, within(0.5)));
    assertThat(compared.rootMeanSquareKelvins()).isCloseTo(9, within(0.5));
    // The hour of cooling lies after the forecast's end.
    assertThat(compared.differences().get(compared.differences().size() - 1).seconds())
        .isLessThanOrEqualTo(Examples.endSeconds());
    assertThat(compared.missed(TemperatureUnit.FAHRENHEIT))
        // 9 K, give or take the rounding of the readings: 1.8 °F a kelvin.
        .contains(
            "was %d °F from the forecast’s middle"
                .formatted(Math.round(1.8 * compared.rootMeanSquareKelvins())));
  }

  @Test
  void insideAndOutsideOfTheBandAreCounted() {
    var d =
        List.of(
            new LogAgainstForecast.Difference(0, 3, -5, 4),
            new LogAgainstForecast.Difference(60, 6, -5, 4),
            new LogAgainstForecast.Difference(120, -12, -5, 4),
            new LogAgainstForecast.Difference(180, -5, -5, 4));
    LogAgainstForecast compared = new LogAgainstForecast(d);
    assertThat(compared.insideShare()).isEqualTo(0.5);
    assertThat(compared.furthest().orElseThrow().outsideKelvins()).isEqualTo(-7);
    assertThat(
            compared.words(
                TemperatureUnit.CELSIUS,
                new org.heatwright.app.report.WhenWords(java.util.Optional.empty())))
        .startsWith(
            "50 % of the readings lie inside the band; the furthest is 7 K below it, at +0:02 h.");
  }

  @Test
  void aLogThatFallsOutsideTheForecastIsSaidToDoSo() {
    LogAgainstForecast none = new LogAgainstForecast(List.of());
    assertThat(none.words(TemperatureUnit.CELSIUS, Examples.before().when()))
        .isEqualTo("No reading of the log falls into the forecast.");
    assertThat(none.missed(TemperatureUnit.CELSIUS)).isEmpty();
  }

  @Test
  void nothingSeenLeavesNoResiduals() {
    assertThatThrownBy(() -> ResidualPlot.of(Examples.before()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void numbersOnAnAxisAreRoundAndReachBeyondTheValues() {
    Axis axis = Axis.numbers(0.926, 1.03, 100, "%");
    assertThat(axis.ticks()).extracting(Axis.Tick::label).containsExactly("90", "95", "100", "105");
    assertThat(axis.low()).isLessThanOrEqualTo(0.926);
    assertThat(axis.high()).isGreaterThanOrEqualTo(1.03);
    assertThat(Axis.numbers(-0.31, 0.4, 1, "").ticks())
        .extracting(Axis.Tick::label)
        .startsWith("−0.4")
        .contains("0.0", "0.4");
    assertThat(Axis.numbers(0, 0, 1, "").high()).isGreaterThan(0);
  }

  @Test
  void datesOnAnAxisNameTheirYearOnce() {
    Axis axis =
        Axis.dates(java.time.LocalDate.of(2026, 11, 2), java.time.LocalDate.of(2027, 2, 20));
    assertThat(axis.ticks())
        .extracting(Axis.Tick::label)
        .containsExactly("Nov", "Dec", "Jan", "Feb");
    assertThat(axis.ticks()).extracting(Axis.Tick::date).containsExactly("2026", "", "2027", "");
    Axis day = Axis.dates(java.time.LocalDate.of(2026, 11, 2), java.time.LocalDate.of(2026, 11, 2));
    assertThat(day.ticks()).extracting(Axis.Tick::label).contains("2 Nov");
  }

  @Test
  void thePageGivesEveryPaintAColourAndTheFilesUseTheSame() throws IOException {
    String css = Files.readString(Path.of("src/main/resources/public/bench.css"));
    Set<String> used = new HashSet<>();
    for (Figure figure : FIGURES.values()) {
      Matcher classes =
          Pattern.compile("[fl]-[a-z]+(?=[ \"])")
              .matcher(Svg.inPage(figure, "p", Figure.Size.WIDE));
      while (classes.find()) {
        used.add(classes.group());
      }
    }
    assertThat(used).allSatisfy(c -> assertThat(css).contains(".plot ." + c + " {"));
  }
}
