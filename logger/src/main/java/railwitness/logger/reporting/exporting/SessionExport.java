package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.reporting.findings.FindingsJson;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Writes a whole session into a folder for other programs: tables, findings, sheets. The folder gets its name when
 * everything is in it; until then it is a hidden one beside, which is cleared away when the export does not come to its
 * end. {@code docs/tables.md} describes the tables.
 */
public final class SessionExport {
    private final Path session;
    private final Path folder;
    private final Optional<ChainState> chain;
    private final CountDownLatch over = new CountDownLatch(1);
    private volatile boolean stopped;

    /** @param folder to make; must not be there yet, or be empty */
    public SessionExport(Path session, Path folder) {
        this(session, folder, Optional.empty());
    }

    /**
     * The same of a session whose chain was looked at before.
     *
     * @param chain what was found then
     */
    public SessionExport(Path session, Path folder, ChainState chain) {
        this(session, folder, Optional.of(chain));
    }

    private SessionExport(Path session, Path folder, Optional<ChainState> chain) {
        this.session = session;
        this.chain = chain;
        this.folder = folder.toAbsolutePath().normalize();
    }

    /**
     * Writes everything on the calling thread.
     *
     * @return how many readings were written
     * @throws ExportException when the folder cannot be made, the session is still recorded, or {@link #stop} was called
     * @throws StoreException when the session cannot be read or the tables not be written
     */
    public long write(ExportListener listener) {
        try (SessionFile file = SessionFile.open(session)) {
            refuse(file);
            Path part = part();
            try {
                long readings = fill(file, part, listener);
                Files.deleteIfExists(folder);
                Files.move(part, folder, StandardCopyOption.ATOMIC_MOVE);
                return readings;
            } catch (IOException e) {
                throw unwritable(e);
            } catch (UncheckedIOException e) {
                throw unwritable(e.getCause());
            } finally {
                clear(part);
            }
        } finally {
            over.countDown();
        }
    }

    private StoreException unwritable(IOException e) {
        return new StoreException(
                "folder " + folder + " cannot be written (" + e.getMessage()
                        + "); is the disk full? Nothing of it is left",
                e);
    }

    private void refuse(SessionFile file) {
        if (file.state() == SessionState.RUNNING) {
            throw new ExportException(
                    "session " + session + " is being recorded right now; export it when it has ended");
        }
        if (Files.exists(folder) && !isEmptyFolder()) {
            throw new ExportException(folder + " is already there and is never written over; choose another folder");
        }
        if (!Files.isDirectory(folder.getParent())) {
            throw new ExportException(
                    "there is no folder " + folder.getParent() + "; make it or choose another for the export");
        }
    }

    private boolean isEmptyFolder() {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        } catch (IOException e) {
            return false;
        }
    }

    private Path part() {
        try {
            String unique = UUID.randomUUID().toString().substring(0, 8);
            return Files.createDirectory(folder.resolveSibling("." + folder.getFileName() + ".part-" + unique));
        } catch (IOException e) {
            throw new ExportException("folder " + folder.getParent() + " cannot be written; choose another");
        }
    }

    private long fill(SessionFile file, Path part, ExportListener listener) throws IOException {
        Times times = new Times(file.anchors());
        new RecordTables(file, times, part).write();
        sheets(file.sheets(), Files.createDirectory(part.resolve("sheets")));
        long readings = new ReadingsTable(file, times, listener, () -> stopped).write(part.resolve("readings.csv"));
        try {
            findings(SessionFindings.of(file, chain.orElseGet(() -> ChainState.of(session, false))), part);
        } catch (SheetException e) {
            noFindings(part, "a sheet in the session cannot be read: " + e.getMessage());
        } catch (StoreException e) {
            noFindings(part, e.getMessage());
        }
        return readings;
    }

    private static void noFindings(Path part, String why) throws IOException {
        Files.writeString(part.resolve("no-findings.txt"), "No findings: " + why + "\n", StandardCharsets.UTF_8);
    }

    private static void findings(SessionFindings findings, Path part) throws IOException {
        FindingsTables tables = new FindingsTables(findings);
        tables.points(part.resolve("points.csv"));
        tables.figures(part.resolve("figures.csv"));
        Files.writeString(part.resolve("findings.json"), FindingsJson.of(findings), StandardCharsets.UTF_8);
    }

    /** Character for character, under a name without anything that could lead elsewhere. */
    private static void sheets(List<SheetEntry> sheets, Path into) throws IOException {
        Set<String> used = new HashSet<>();
        for (SheetEntry sheet : sheets) {
            String plain =
                    sheet.fileName().matches("[A-Za-z0-9_][A-Za-z0-9._-]{0,99}") ? sheet.fileName() : "sheet.toml";
            String name = plain;
            for (int i = 2; !used.add(name.toLowerCase(java.util.Locale.ROOT)); i++) {
                name = i + "-" + plain;
            }
            Files.writeString(into.resolve(name), sheet.text(), StandardCharsets.UTF_8);
        }
    }

    /** Ends the export soon from another thread and waits until what it had begun is cleared away, at most 10 s. */
    public void stop() {
        stopped = true;
        try {
            over.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void clear(Path part) {
        if (!Files.exists(part)) {
            return;
        }
        try (Stream<Path> all = Files.walk(part)) {
            all.sorted(Comparator.reverseOrder()).forEach(one -> one.toFile().delete());
        } catch (IOException e) {
            // What cannot be cleared away stays under its hidden name; the reason for giving up is told by the caller.
        }
    }
}
