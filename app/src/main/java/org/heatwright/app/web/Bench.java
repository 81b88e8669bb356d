package org.heatwright.app.web;

import io.javalin.Javalin;
import java.net.URI;
import org.eclipse.jetty.server.LocalConnector;

/** The running bench. Close it to stop serving; the store stays open. */
public final class Bench implements AutoCloseable {

  /** A day's log of a reading a second fits, whatever its form makes of it. */
  private static final long LONGEST_REQUEST_BYTES = 20_000_000;

  private final Javalin server;
  private final LongWork work;
  private final DemoHouse demo;
  private final Routes routes;

  private Bench(Javalin server, Routes routes, LongWork work, DemoHouse demo) {
    this.server = server;
    this.routes = routes;
    this.work = work;
    this.demo = demo;
  }

  /**
   * Starts serving on loopback.
   *
   * @throws BenchException if the port that was asked for is taken
   */
  public static Bench start(BenchSettings settings) {
    if (settings.port().isPresent()) {
      return start(settings, settings.port().getAsInt());
    }
    try {
      return start(settings, BenchSettings.USUAL_PORT);
    } catch (BenchException taken) {
      return start(settings, 0);
    }
  }

  /**
   * Begins to load what serving needs, beside whatever else a start has to do: a server that hears
   * nothing is made, started and stopped. Nothing depends on it.
   */
  public static void warmUp() {
    beside(
        "warm-up",
        () ->
            Javalin.create(
                    config -> {
                      config.startup.showJavalinBanner = false;
                      config.jetty.addConnector((server, http) -> new LocalConnector(server));
                    })
                .start()
                .stop());
  }

  /** Begins to work out what the plan's page opens with. Nothing depends on it. */
  public void workAhead() {
    beside(
        "work-ahead",
        () -> {
          try {
            routes.workOutOpening();
          } catch (RuntimeException e) {
            // Whoever opens the page is told.
          }
        });
  }

  private static void beside(String name, Runnable what) {
    Thread thread = new Thread(what, name);
    thread.setDaemon(true);
    thread.start();
  }

  /** Where the bench answers, e.g. {@code http://127.0.0.1:7070/}. */
  public URI address() {
    return URI.create("http://127.0.0.1:" + server.port() + "/");
  }

  @Override
  public void close() {
    work.close();
    server.stop();
    demo.close();
  }

  private static Bench start(BenchSettings settings, int port) {
    LongWork work = new LongWork(settings.clock());
    DemoHouse demo = new DemoHouse(settings);
    Routes pages = new Routes(settings, work, demo);
    Javalin server =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.jetty.host = "127.0.0.1";
              config.http.maxRequestSize = LONGEST_REQUEST_BYTES;
              pages.addTo(config.routes);
              Measures measures = new Measures(settings.store(), settings.clock());
              config.requestLogger.http(measures::answered);
              config.routes.get("/metrics", measures::give);
              settings.api().ifPresent(api -> api.addTo(config.routes));
              config.routes.get("/{file}", new PublicFiles()::give);
            });
    try {
      server.start(port);
    } catch (RuntimeException e) {
      work.close();
      server.stop();
      throw new BenchException(
          "Port %d on 127.0.0.1 is taken; choose another with --port.".formatted(port), e);
    }
    return new Bench(server, pages, work, demo);
  }
}
