package org.heatwright.app.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Work that takes longer than a page may: it runs beside the pages, says how far it is and can be
 * stopped. What takes minutes runs one at a time, the others wait in line; what takes seconds
 * begins at once. Safe for use from several threads.
 */
final class LongWork implements AutoCloseable {

  /** Enough to look at what has ended. */
  private static final int KEPT = 16;

  private final Clock clock;
  private final ExecutorService one = Executors.newSingleThreadExecutor(LongWork::thread);
  private final ExecutorService atOnce = Executors.newCachedThreadPool(LongWork::thread);
  private final Map<String, Piece> pieces =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Piece> eldest) {
          return size() > KEPT && eldest.getValue().answer.isDone();
        }
      };

  LongWork(Clock clock) {
    this.clock = clock;
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "long-work");
    thread.setDaemon(true);
    return thread;
  }

  /**
   * What it leads to.
   *
   * @param address of the page to go to; empty where there is none
   * @param status of the page where it has no address
   * @param html lays that page out
   */
  record Answer(String address, int status, Supplier<String> html) {
    static Answer at(String address) {
      return new Answer(address, 0, () -> "");
    }

    static Answer page(int status, Supplier<String> html) {
      return new Answer("", status, html);
    }
  }

  /** One piece of work. */
  static final class Piece {
    private final String id = UUID.randomUUID().toString();
    private final String what;
    private final Place place;
    private final String from;
    private final Instant begun;
    private final boolean freeAtOnce;
    private final CompletableFuture<Answer> answer = new CompletableFuture<>();
    private volatile String step = "";
    private volatile boolean stopped;

    private Piece(String what, Place place, String from, Instant begun, boolean freeAtOnce) {
      this.what = what;
      this.place = place;
      this.from = from;
      this.begun = begun;
      this.freeAtOnce = freeAtOnce;
    }

    String id() {
      return id;
    }

    /** What is being done, in a heading. */
    String what() {
      return what;
    }

    /** Where a person is who waits for it. */
    Place place() {
      return place;
    }

    /** Address of the page that asked for it. */
    String from() {
      return from;
    }

    /** What it is at now, a sentence; empty while it waits in line. */
    String step() {
      return step;
    }

    boolean stopped() {
      return stopped;
    }

    boolean done() {
      return answer.isDone();
    }

    /**
     * Says what comes now.
     *
     * @throws CancellationException if a person has stopped it
     */
    void at(String sentence) {
      if (stopped) {
        throw new CancellationException(what);
      }
      step = sentence;
    }
  }

  /**
   * Begins, or waits in line.
   *
   * @param what in a heading
   * @param place where a person is who waits for it
   * @param from address of the page that asks for it
   * @param task is told where to say how far it is
   */
  Piece begin(String what, Place place, String from, Function<Piece, Answer> task) {
    return begin(one, new Piece(what, place, from, clock.instant(), false), task);
  }

  /**
   * Begins at once. Who stops it is free at once, too, though it may go on for a moment.
   *
   * @param what in a heading
   * @param place where a person is who waits for it
   * @param from address of the page to go to where it is stopped
   * @param task is told where to say how far it is
   */
  Piece beginAtOnce(String what, Place place, String from, Function<Piece, Answer> task) {
    return begin(atOnce, new Piece(what, place, from, clock.instant(), true), task);
  }

  private Piece begin(ExecutorService lane, Piece piece, Function<Piece, Answer> task) {
    synchronized (pieces) {
      pieces.put(piece.id, piece);
    }
    lane.execute(() -> run(piece, task));
    return piece;
  }

  private static void run(Piece piece, Function<Piece, Answer> task) {
    try {
      piece.at(piece.step);
      piece.answer.complete(task.apply(piece));
    } catch (CancellationException stopped) {
      piece.answer.cancel(false);
    } catch (RuntimeException | Error e) {
      piece.answer.completeExceptionally(e);
    }
  }

  Optional<Piece> find(String id) {
    synchronized (pieces) {
      return Optional.ofNullable(pieces.get(id));
    }
  }

  /** Asks it to end; it does so before its next step. */
  void stop(Piece piece) {
    piece.stopped = true;
    if (piece.step.isEmpty() || piece.freeAtOnce) {
      piece.answer.cancel(false);
    }
  }

  /** How long it has been going. */
  Duration since(Piece piece) {
    return Duration.between(piece.begun, clock.instant());
  }

  /**
   * What it leads to, if it is there within that time.
   *
   * @throws CancellationException if it was stopped
   * @throws IllegalStateException if it failed
   */
  Optional<Answer> within(Piece piece, Duration patience) {
    return Awaited.within(piece.answer, patience);
  }

  /** Ends what is going on. */
  @Override
  public void close() {
    synchronized (pieces) {
      pieces.values().forEach(this::stop);
    }
    one.shutdown();
    atOnce.shutdown();
  }
}
