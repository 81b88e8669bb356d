package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.store.Archive;
import org.heatwright.app.store.ArchiveException;
import org.heatwright.app.store.Store;

/** Everything as one file to take away, and such a file brought. */
final class ArchiveRoutes {

  private final Store store;
  private final Clock clock;
  private final ShelfRoutes shelf;

  ArchiveRoutes(Store store, Clock clock, ShelfRoutes shelf) {
    this.store = store;
    this.clock = clock;
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/archive.zip", this::take);
    routes.post("/archive", this::bring);
  }

  private void take(Context ctx) throws IOException {
    Path file = Files.createTempFile("heatwright-", ".zip");
    try (OutputStream out = Files.newOutputStream(file)) {
      Archive.write(store, out);
    }
    ctx.contentType("application/zip")
        .header(
            "Content-Disposition",
            "attachment; filename=\"heatwright-%s.zip\"".formatted(LocalDate.now(clock)))
        .result(Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE));
  }

  private void bring(Context ctx) throws IOException {
    Optional<UploadedFile> file =
        Optional.ofNullable(ctx.uploadedFile("archive")).filter(f -> f.size() > 0);
    if (file.isEmpty()) {
      refuse(ctx, "Choose the archive first.");
      return;
    }
    try (InputStream in = file.get().content()) {
      Archive.Brought brought = Archive.read(in, store, clock);
      ctx.html(shelf.page(ctx, Moved.of(brought)));
    } catch (ArchiveException e) {
      refuse(ctx, Objects.requireNonNull(e.getMessage()));
    }
  }

  private void refuse(Context ctx, String sentence) {
    ctx.status(422).html(shelf.page(ctx, Moved.wrong(sentence)));
  }
}
