package org.heatwright.app.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.ArchiveBringJson;
import org.heatwright.app.store.Archive;
import org.heatwright.app.store.ArchiveException;
import org.heatwright.app.store.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Command(
    name = "bring",
    description = {
      "Brings all of an archive to your store, which is made if it is not there.",
      "What is in both stays once; where a name holds different texts the older one is kept as earlier."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright archive bring studio.zip"})
final class ArchiveBringCommand implements Callable<Integer> {

  @Parameters(paramLabel = "FILE", description = "What archive save wrote, or the bench.")
  private Path path;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ArchiveBringCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (!Files.isRegularFile(path)) {
      throw InputException.in(path.toString(), "there is no such file; expected an archive.");
    }
    requireArchive();
    Archive.Brought brought;
    try (InputStream in = Files.newInputStream(path);
        Store store = Store.open(ownStore.file(surroundings), surroundings.clock())) {
      brought = Archive.read(in, store, surroundings.clock());
    } catch (ArchiveException e) {
      throw InputException.in(path.toString(), Objects.requireNonNull(e.getMessage()));
    } catch (IOException e) {
      throw InputException.in(path.toString(), "the file cannot be read; check who owns it.");
    }
    answer.give(
        surroundings,
        new ArchiveBringJson(
            brought.texts(), brought.logs(), brought.firings(), brought.cards(), brought.pieces()),
        page(brought));
    return Answer.DONE;
  }

  /** Before a store is made for it. */
  private void requireArchive() {
    try (InputStream in = Files.newInputStream(path)) {
      Archive.require(in, surroundings.clock());
    } catch (ArchiveException e) {
      throw InputException.in(path.toString(), Objects.requireNonNull(e.getMessage()));
    } catch (IOException e) {
      throw InputException.in(path.toString(), "the file cannot be read; check who owns it.");
    }
  }

  private static Page page(Archive.Brought brought) {
    Page page = new Page();
    if (brought.nothing()) {
      return page.line("All of it was here already.");
    }
    page.line("New here:");
    line(page, "kilns, keypads, work and schedules", brought.texts());
    line(page, "logs", brought.logs());
    line(page, "firings in the book", brought.firings());
    line(page, "cards", brought.cards());
    line(page, "firings of named pieces", brought.pieces());
    return page;
  }

  private static void line(Page page, String what, int count) {
    if (count > 0) {
      page.line("  %d %s".formatted(count, what));
    }
  }
}
