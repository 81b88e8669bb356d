package org.heatwright.app.cli;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.store.StoreException;
import org.heatwright.app.web.BenchException;
import org.heatwright.work.WorkRefusedException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Parses the command line and runs the command it names. */
public final class Cli {

  @Command(
      name = "heatwright",
      description = {
        "From the work on the bench to a keyed-in, proven firing program, and when it is ready.",
        "Heatwright never starts heat itself: a person at the kiln does."
      },
      synopsisSubcommandLabel = "COMMAND",
      footerHeading = "%nExamples:%n",
      footer = {
        "  heatwright demo",
        "  heatwright compose work.yaml --kiln anchor.yaml -o schedule.yaml",
        "  heatwright forecast schedule.yaml --kiln anchor.yaml --ready-by 10:00",
        "",
        "Exit codes: 0 done; 1 done, with a finding that says stop; 2 the input is",
        "wrong; 3 the device or store failed. heatwright COMMAND --help says more;",
        "heatwright completion prints a script that completes words in bash and zsh."
      })
  private static final class Root {
    @Option(names = "--help", usageHelp = true, description = "Show this help.")
    private boolean help;

    @Option(names = "--version", versionHelp = true, description = "Show the version.")
    private boolean version;
  }

  /** Every command by its name, in the order in which the help shows them. */
  private static final Map<String, Function<Surroundings, Object>> COMMANDS = commands();

  /** No number that an option takes is larger; our estimate. */
  private static final double LARGEST = 1e9;

  private Cli() {}

  /** Runs a command in this process's surroundings. */
  public static int run(String... args) {
    return run(Surroundings.ofProcess(), args);
  }

  static int run(Surroundings surroundings, String... args) {
    Locale.setDefault(Locale.ROOT); // numbers with a decimal point, whatever the machine speaks
    CommandLine line = commandLine(surroundings, args);
    if (args.length == 0) {
      line.usage(line.getErr());
      return Answer.WRONG_INPUT;
    }
    int code = execute(line, args);
    if (surroundings.out().checkError()) {
      line.getErr().println("The answer could not be written in full; is the disk full?");
      return Answer.FAILED;
    }
    return code;
  }

  /** Runs a command whose every word means itself: none stands for a file of more words. */
  static int runQuoted(Surroundings surroundings, String... args) {
    return execute(commandLine(surroundings, args).setExpandAtFiles(false), args);
  }

  /** A broken installation or too little memory is told in a sentence too. */
  private static int execute(CommandLine line, String... args) {
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      line.getErr().println("There is not enough memory for this; close other programs and retry.");
      return Answer.FAILED;
    } catch (LinkageError | StackOverflowError e) {
      line.getErr().println(unexpected(e));
      return Answer.FAILED;
    }
  }

  private static Map<String, Function<Surroundings, Object>> commands() {
    Map<String, Function<Surroundings, Object>> all = new LinkedHashMap<>();
    all.put("demo", DemoCommand::new);
    all.put("serve", ServeCommand::new);
    all.put("compose", ComposeCommand::new);
    all.put("inspect", InspectCommand::new);
    all.put("forecast", ForecastCommand::new);
    all.put("inside", InsideCommand::new);
    all.put("keypad", KeypadCommand::line);
    all.put("keying", KeyingCommand::new);
    all.put("readback", ReadbackCommand::new);
    all.put("slots", SlotsCommand::line);
    all.put("card", CardCommand::new);
    all.put("rehearse", RehearseCommand::new);
    all.put("send", SendCommand::new);
    all.put("scan", ScanCommand::new);
    all.put("log", LogCommand::line);
    all.put("learn", LearnCommand::new);
    all.put("health", HealthCommand::new);
    all.put("pieces", PiecesCommand::new);
    all.put("why", WhyCommand::new);
    all.put("body", BodyCommand::new);
    all.put("couple", CoupleCommand::new);
    all.put("offset", OffsetCommand::new);
    all.put("materials", MaterialsCommand::new);
    all.put("values", ValuesCommand::new);
    all.put("heatwork", HeatworkCommand::new);
    all.put("cast", CastCommand::line);
    all.put("sinter", SinterCommand::line);
    all.put("archive", ArchiveCommand::line);
    all.put("completion", CompletionCommand::new);
    return all;
  }

  /** All commands. */
  static CommandLine commandLine(Surroundings surroundings) {
    return commandLine(surroundings, COMMANDS.values());
  }

  /** The command that the words name, alone if they begin with it: looking into all takes long. */
  private static CommandLine commandLine(Surroundings surroundings, String... args) {
    Function<Surroundings, Object> named = args.length == 0 ? null : COMMANDS.get(args[0]);
    return named == null ? commandLine(surroundings) : commandLine(surroundings, List.of(named));
  }

  private static CommandLine commandLine(
      Surroundings surroundings, Collection<Function<Surroundings, Object>> asked) {
    CommandLine line = new CommandLine(new Root());
    line.getCommandSpec().version("heatwright " + version());
    asked.forEach(command -> line.addSubcommand(command.apply(surroundings)));
    line.setOut(writer(surroundings.out()));
    line.setErr(writer(surroundings.err()));
    line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    line.setUsageHelpWidth(Page.COLUMNS);
    line.setUsageHelpLongOptionsMaxWidth(22);
    // One object for both: Java 17 crashes when it lays out the classes of two alike (heatwright).
    ITypeConverter<Double> numbers = Cli::number;
    line.registerConverter(Double.class, numbers);
    line.registerConverter(double.class, numbers);
    line.setParameterExceptionHandler(Cli::wrongArguments);
    line.setExecutionExceptionHandler(Cli::failed);
    line.setExecutionStrategy(
        parsed -> {
          NamedFiles.requireApart(parsed);
          return new CommandLine.RunLast().execute(parsed);
        });
    return line;
  }

  /** Java's own reading takes "800F" for 800, and "NaN" for a number. */
  private static Double number(String text) {
    OptionalDouble value = text.contains(",") ? OptionalDouble.empty() : TypedNumber.bare(text);
    if (value.isEmpty() || Math.abs(value.getAsDouble()) > LARGEST) {
      throw new TypeConversionException(
          "'%s' is not a number; expected digits alone, without a unit, such as 800 or 0.5"
              .formatted(text));
    }
    return value.getAsDouble();
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
  }

  private static String version() {
    String version = Cli.class.getPackage().getImplementationVersion();
    return version == null ? "in development" : version;
  }

  private static int wrongArguments(ParameterException e, String[] args) {
    CommandLine line = e.getCommandLine();
    String sentence =
        String.valueOf(e.getMessage()).replaceAll("\\s+", " ").replaceAll("[. ]+$", "");
    sentence = sentence.replaceFirst("^Error: ", "");
    sentence = sentence.replace(" is not an int", " is not a whole number");
    sentence = sentence.replace(" is not a double", " is not a number");
    sentence =
        sentence.replaceFirst(
            "cannot convert '(.*)' to interface java.nio.file.Path .*",
            "'$1' cannot be a file's name in this locale; try LC_ALL=C.UTF-8");
    String hint = "";
    if (e instanceof UnmatchedArgumentException unmatched) {
      sentence = "Not expected here: %s".formatted(String.join(", ", unmatched.getUnmatched()));
      List<String> near = unmatched.getSuggestions();
      hint = near.isEmpty() ? "" : " (did you mean %s?)".formatted(near.get(0));
    }
    line.getErr().println(sentence + hint + ".");
    line.getErr().println("Try %s --help.".formatted(line.getCommandSpec().qualifiedName()));
    return Answer.WRONG_INPUT;
  }

  private static int failed(Exception e, CommandLine line, ParseResult parsed) {
    if (e instanceof InputException || e instanceof WorkRefusedException) {
      line.getErr().println(e.getMessage());
      return Answer.WRONG_INPUT;
    }
    if (e instanceof StoreException || e instanceof BenchException) {
      line.getErr().println(e.getMessage());
      return Answer.FAILED;
    }
    if (e instanceof InterruptedException) {
      Thread.currentThread().interrupt();
      return Answer.DONE;
    }
    line.getErr().println(unexpected(e));
    return Answer.FAILED;
  }

  private static String unexpected(Throwable e) {
    return "Heatwright met something it did not expect (%s: %s). Please report it with the files"
            .formatted(
                e.getClass().getSimpleName(),
                String.valueOf(e.getMessage()).replaceAll("\\s+", " "))
        + " you used.";
  }
}
