package org.heatwright.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.heatwright.app.json.ArchiveSaveJson;
import org.heatwright.app.store.Archive;
import org.heatwright.app.store.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Command(
    name = "save",
    description = {
      "Writes all of your store into one ZIP file: the store itself, and its texts, logs and cards as plain files.",
      "An archive that is there is replaced, any other file is not."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright archive save studio.zip"})
final class ArchiveSaveCommand implements Callable<Integer> {

  @Parameters(paramLabel = "FILE", description = "Where to write it.")
  private Path path;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ArchiveSaveCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws IOException {
    Output.requireReplaceable(path, Output.Kind.ARCHIVE);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Store store = ownStore.open(surroundings)) {
      Archive.write(store, out);
    }
    String written = Output.write(path, Output.Kind.ARCHIVE, out.toByteArray());
    answer.give(
        surroundings, new ArchiveSaveJson(path.toString(), out.size()), new Page().line(written));
    return Answer.DONE;
  }
}
