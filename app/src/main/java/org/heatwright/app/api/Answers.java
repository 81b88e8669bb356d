package org.heatwright.app.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Which records a command answers with; a command that has none is not asked over HTTP. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Answers {

  /** The records, the usual one first. */
  Class<? extends Record>[] value();
}
