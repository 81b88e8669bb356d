package org.heatwright.app.api;

import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Field;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * What one option or parameter of a command is called and holds in a request.
 *
 * @param name in the request's JSON
 * @param option as the command line writes it, e.g. {@code --ready-by}; empty for a parameter
 * @param holds what
 * @param many a list of them
 * @param required without it the command cannot be run
 * @param about one sentence
 * @param parts what stands in a group; empty where it is none
 */
record Property(
    String name,
    String option,
    Holds holds,
    boolean many,
    boolean required,
    String about,
    List<Property> parts) {

  private static final Pattern WORD_BREAK = Pattern.compile("-+([a-z0-9])");
  private static final Map<Class<?>, Holds> PLAIN =
      Map.of(
          Path.class, Holds.FILE,
          boolean.class, Holds.FLAG,
          Boolean.class, Holds.FLAG,
          int.class, Holds.WHOLE_NUMBER,
          Integer.class, Holds.WHOLE_NUMBER,
          double.class, Holds.NUMBER,
          Double.class, Holds.NUMBER);

  /** Kinds of value. */
  enum Holds {
    /** A file that is read. */
    FILE,
    /** The name to give to a file that is written. */
    WRITTEN,
    FLAG,
    WHOLE_NUMBER,
    NUMBER,
    TEXT,
    /** Options that belong together. */
    GROUP
  }

  /** An option or parameter. */
  static Property of(ArgSpec arg) {
    return new Property(
        name(arg),
        arg instanceof OptionSpec option ? option.longestName() : "",
        holds(arg),
        arg.isMultiValue(),
        !inOptionalGroup(arg) && (arg.required() || !arg.isOption() && arg.arity().min() > 0),
        sentence(arg.description()),
        List.of());
  }

  /** Options that belong together. */
  static Property of(ArgGroupSpec group) {
    return new Property(
        name(group),
        "",
        Holds.GROUP,
        group.multiplicity().max() > 1,
        group.multiplicity().min() > 0,
        group.heading() == null ? "" : group.heading().replace("%n", "").replaceFirst(":$", "."),
        group.args().stream().map(Property::of).toList());
  }

  private static boolean inOptionalGroup(ArgSpec arg) {
    return arg.group() != null && arg.group().multiplicity().min() == 0;
  }

  private static String sentence(String[] lines) {
    return Arrays.stream(lines)
        .collect(Collectors.joining(" "))
        .replace("%n", " ")
        .replace("%%", "%");
  }

  /** The longest name without its hyphens; of a parameter and a bare letter, its field's. */
  private static String name(ArgSpec arg) {
    String longest = arg instanceof OptionSpec option ? option.longestName() : "";
    if (longest.startsWith("--")) {
      return WORD_BREAK
          .matcher(longest.substring(2))
          .replaceAll(found -> found.group(1).toUpperCase(Locale.ROOT));
    }
    return field(arg).getName().replaceFirst("(?<=.)Path$", "").replaceFirst("^path$", "file");
  }

  /** That of the class which the options are fields of. */
  private static String name(ArgGroupSpec group) {
    String type = field(group.args().iterator().next()).getDeclaringClass().getSimpleName();
    String bare = type.replaceFirst("Options$", "");
    return bare.substring(0, 1).toLowerCase(Locale.ROOT) + bare.substring(1);
  }

  private static Holds holds(ArgSpec arg) {
    Class<?> type =
        Arrays.stream(arg.auxiliaryTypes())
            .filter(PLAIN::containsKey)
            .min(Comparator.comparing(Class::getName))
            .orElse(arg.type());
    if (type == Path.class && field(arg).isAnnotationPresent(Written.class)) {
      return Holds.WRITTEN;
    }
    return PLAIN.getOrDefault(type, Holds.TEXT);
  }

  private static Field field(ArgSpec arg) {
    AnnotatedElement element = (AnnotatedElement) arg.userObject();
    return (Field) element;
  }
}
