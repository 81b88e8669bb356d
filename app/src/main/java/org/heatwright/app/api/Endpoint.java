package org.heatwright.app.api;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/**
 * A command as it is asked over HTTP.
 *
 * @param words the command's, e.g. "cast", "metal"
 * @param about what it does
 * @param properties what it may be told
 * @param answers the records it answers with, the usual one first
 */
record Endpoint(
    List<String> words,
    String about,
    List<Property> properties,
    List<Class<? extends Record>> answers) {

  /** Options of every command that make no sense in a request, and the store, which is ours. */
  private static final Set<String> LEFT_OUT = Set.of("--json", "--help", "--store");

  /** Every command under {@code root} that answers with a record. */
  static List<Endpoint> all(CommandSpec root) {
    return under(root, List.of()).toList();
  }

  /** What follows the API's own address, e.g. {@code cast/metal}. */
  String path() {
    return String.join("/", words);
  }

  /** A name for programs, e.g. {@code castMetal}. */
  String operation() {
    StringBuilder name = new StringBuilder();
    for (String word : words) {
      name.append(name.isEmpty() ? word : capital(word));
    }
    return name.toString();
  }

  /** Where a record stands in the answer: the usual one as the answer, any other by its name. */
  String answerName(Class<? extends Record> record) {
    return record == answers.get(0) ? "answer" : lower(Schemas.name(record));
  }

  /** Which of the records was answered with: that with the answer's keys. */
  Class<? extends Record> answered(JsonNode answer) {
    Set<String> keys =
        answer.properties().stream().map(Map.Entry::getKey).collect(Collectors.toSet());
    return answers.stream()
        .filter(
            record ->
                Arrays.stream(record.getRecordComponents())
                    .map(RecordComponent::getName)
                    .collect(Collectors.toSet())
                    .equals(keys))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("The command answers with another record."));
  }

  private static String lower(String name) {
    return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }

  static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  private static Stream<Endpoint> under(CommandSpec spec, List<String> words) {
    Stream<Endpoint> here = of(spec, words).stream();
    Stream<Endpoint> below =
        spec.subcommands().entrySet().stream()
            .flatMap(
                entry -> {
                  List<String> longer = new ArrayList<>(words);
                  longer.add(entry.getKey());
                  return under(entry.getValue().getCommandSpec(), longer);
                });
    return Stream.concat(here, below);
  }

  private static Optional<Endpoint> of(CommandSpec spec, List<String> words) {
    Object command = spec.userObject();
    Answers answers = command == null ? null : command.getClass().getAnnotation(Answers.class);
    if (answers == null) {
      return Optional.empty();
    }
    List<Property> properties = new ArrayList<>();
    for (ArgGroupSpec group : spec.argGroups()) {
      if (group.multiplicity().max() > 1) {
        properties.add(Property.of(group));
      }
    }
    Stream.concat(spec.positionalParameters().stream(), spec.options().stream())
        .filter(arg -> !leftOut(arg) && !inManyfold(arg))
        .map(Property::of)
        .forEach(properties::add);
    String about = String.join(" ", spec.usageMessage().description()).replace("%%", "%");
    return Optional.of(
        new Endpoint(List.copyOf(words), about, properties, List.of(answers.value())));
  }

  private static boolean leftOut(ArgSpec arg) {
    return arg instanceof CommandLine.Model.OptionSpec option
        && LEFT_OUT.contains(option.longestName());
  }

  private static boolean inManyfold(ArgSpec arg) {
    return arg.group() != null && arg.group().multiplicity().max() > 1;
  }
}
