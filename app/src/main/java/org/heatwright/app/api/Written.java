package org.heatwright.app.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** An option that names a file or folder that a command writes, not one that it reads. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.FIELD)
public @interface Written {

  /** Whether the file may be one that the command reads: it is then kept under another name. */
  boolean inPlace() default false;
}
