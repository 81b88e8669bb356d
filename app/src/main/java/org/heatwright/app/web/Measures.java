package org.heatwright.app.web;

import io.javalin.http.Context;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.core.metrics.Histogram;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import io.prometheus.metrics.instrumentation.jvm.JvmMetrics;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.app.store.StoreException;

/**
 * What can be measured of the running bench, as text for Prometheus (exposition format 0.0.4): how
 * long answers take, what is on the shelf, what is hot, and the machine below. Safe for use from
 * several threads.
 */
final class Measures {

  private static final double[] ANSWER_SECONDS = {0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30};

  private final PrometheusRegistry registry = new PrometheusRegistry();
  private final Store store;
  private final FiringBook book;
  private final Histogram answers;

  Measures(Store store, Clock clock) {
    this.store = store;
    this.book = new FiringBook(store, clock);
    this.answers =
        Histogram.builder()
            .name("heatwright_answer_seconds")
            .help("How long the bench took to answer, by page and status.")
            .labelNames("method", "page", "status")
            .classicOnly()
            .classicUpperBounds(ANSWER_SECONDS)
            .register(registry);
    gauge("heatwright_shelf_texts", "Texts on the shelf, by kind.", this::shelf, "kind");
    gauge(
        "heatwright_firings", "Firings in the book, by where they stand.", this::firings, "state");
    gauge(
        "heatwright_display_celsius",
        "What the display of a running firing was last told to say.",
        this::displays,
        "kiln",
        "job");
    JvmMetrics.builder().register(registry);
  }

  /** Takes note of an answer. */
  void answered(Context ctx, float millis) {
    var endpoint = ctx.endpoints().lastHttpEndpoint();
    answers
        .labelValues(
            ctx.method().toString(),
            endpoint == null ? "file" : endpoint.path,
            Integer.toString(ctx.statusCode()))
        .observe(millis / 1000.0);
  }

  /** Everything, as text. */
  void give(Context ctx) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrometheusTextFormatWriter.create().write(out, registry.scrape());
    ctx.contentType(PrometheusTextFormatWriter.CONTENT_TYPE).result(out.toByteArray());
  }

  private void gauge(
      String name, String help, Consumer<GaugeWithCallback.Callback> values, String... labels) {
    GaugeWithCallback.builder()
        .name(name)
        .help(help)
        .labelNames(labels)
        .callback(values)
        .register(registry);
  }

  private void shelf(GaugeWithCallback.Callback gauge) {
    for (Kind kind : Kind.values()) {
      gauge.call(reachable(() -> store.all(kind).size(), 0), kind.word());
    }
  }

  private void firings(GaugeWithCallback.Callback gauge) {
    List<FiringRecord> all = reachable(book::all, List.of());
    Arrays.stream(FiringRecord.State.values())
        .forEach(
            state ->
                gauge.call(
                    all.stream().filter(f -> f.state() == state).count(),
                    state.name().toLowerCase(Locale.ROOT)));
  }

  private void displays(GaugeWithCallback.Callback gauge) {
    for (FiringRecord firing : reachable(book::all, List.<FiringRecord>of())) {
      List<FiringEntry.Told> shown = firing.all(Happening.SHOWN);
      if (firing.state() == FiringRecord.State.RUNNING && !shown.isEmpty()) {
        gauge.call(
            shown.get(shown.size() - 1).celsius().orElseThrow(),
            firing.entry().kiln(),
            firing.entry().job());
      }
    }
  }

  /** A store that fails is told by {@code /health}; what else there is to measure still is. */
  private static <T> T reachable(Supplier<T> asked, T otherwise) {
    try {
      return asked.get();
    } catch (StoreException e) {
      return otherwise;
    }
  }
}
