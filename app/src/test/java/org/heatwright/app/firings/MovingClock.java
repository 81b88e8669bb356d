package org.heatwright.app.firings;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** A clock that stands until a test moves it. */
public final class MovingClock extends Clock {

  private final ZoneId zone;
  private volatile Instant now;

  public MovingClock(Instant start, ZoneId zone) {
    this.now = start;
    this.zone = zone;
  }

  public void move(Duration on) {
    now = now.plus(on);
  }

  public void set(Instant moment) {
    now = moment;
  }

  @Override
  public Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return zone;
  }

  @Override
  public Clock withZone(ZoneId other) {
    return new MovingClock(now, other);
  }
}
