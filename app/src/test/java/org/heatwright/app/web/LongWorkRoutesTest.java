package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.Javalin;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A page that takes seconds shows how far it is, can be stopped, and comes to its own address. */
class LongWorkRoutesTest {

  private final LongWork work = new LongWork(Clock.systemUTC());
  private final CountDownLatch there = new CountDownLatch(1);
  private Javalin server;
  private AskedBench asked;

  @BeforeEach
  void serve() {
    LongWorkRoutes longRoutes = new LongWorkRoutes(work, new Pages(Optional.empty()), () -> "now");
    server =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.jetty.host = "127.0.0.1";
                  longRoutes.addTo(config.routes);
                  config.routes.get(
                      "/slow",
                      ctx ->
                          longRoutes.before(
                              ctx,
                              "Counting to three",
                              Place.PLAN,
                              piece -> {
                                piece.at("Two of three are counted.");
                                await();
                                return "All three are counted.";
                              },
                              ctx::result));
                  config.routes.get(
                      "/wrong",
                      ctx ->
                          longRoutes.before(
                              ctx,
                              "Looking for it",
                              Place.PLAN,
                              piece -> {
                                throw new NotFoundResponse("There is no such thing.");
                              },
                              nothing -> {}));
                })
            .start(0);
    asked = new AskedBench(URI.create("http://127.0.0.1:" + server.port() + "/"));
  }

  @AfterEach
  void stop() {
    there.countDown();
    server.stop();
    work.close();
  }

  private void await() {
    try {
      there.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private HttpResponse<String> slow(String from) throws IOException, InterruptedException {
    return asked.send(asked.request("slow?to=three").header("Referer", asked.address() + from));
  }

  @Test
  void showsHowFarItIsAndThenThePageItself() throws Exception {
    String going = AskedBench.going(slow("kilns")).orElseThrow();
    HttpResponse<String> waiting = asked.send(asked.request(going));
    assertThat(waiting.statusCode()).isEqualTo(200);
    assertThat(waiting.body())
        .contains("Counting to three")
        .contains("Two of three are counted.")
        .contains("<a href=\"/plan\" aria-current=\"true\">");
    there.countDown();
    assertThat(asked.get("slow?to=three").body()).isEqualTo("All three are counted.");
    HttpResponse<String> done = asked.send(asked.request(going));
    assertThat(done.statusCode()).isEqualTo(302);
    assertThat(done.headers().firstValue("Location").orElseThrow()).endsWith("/slow?to=three");
  }

  @Test
  void whoStopsItIsFreeAtOnceAndBackWhereTheyCameFrom() throws Exception {
    String going = AskedBench.going(slow("kilns?of=all")).orElseThrow();
    asked.post(going + "/stop", Map.of());
    HttpResponse<String> back = asked.send(asked.request(going));
    assertThat(back.statusCode()).isEqualTo(302);
    assertThat(back.headers().firstValue("Location").orElseThrow()).endsWith("/kilns?of=all");
  }

  @Test
  void whoStopsAPageThatLedToItselfIsNotSentRoundInACircle() throws Exception {
    String going = AskedBench.going(slow("slow?to=three")).orElseThrow();
    asked.post(going + "/stop", Map.of());
    HttpResponse<String> back = asked.send(asked.request(going));
    assertThat(back.headers().firstValue("Location").orElseThrow()).endsWith("/");
  }

  @Test
  void whatIsWrongIsToldAsIfNobodyHadWaited() throws Exception {
    HttpResponse<String> answer = asked.get("wrong");
    assertThat(answer.statusCode()).isEqualTo(404);
    assertThat(answer.body()).contains("There is no such thing.");
  }

  @Test
  void whatIsThereSoonComesAtOnce() throws Exception {
    there.countDown();
    HttpResponse<String> answer = slow("kilns");
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.body()).isEqualTo("All three are counted.");
  }
}
