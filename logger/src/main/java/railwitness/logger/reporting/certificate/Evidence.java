package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import railwitness.analysis.supply.Points;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.InstrumentEntry;
import railwitness.logger.recording.store.NoteEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.HoldCharts;
import railwitness.logger.reporting.chart.WaveformCharts;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Everything a certificate is made from, read once.
 *
 * @param seal digest of the session, 64 hexadecimal digits
 * @param issue which one of the session's certificates
 * @param verified whether the chain was worked out again for this certificate; one that takes over a minute is not
 * @param holdCharts pictures of waveforms and of the soak, where there were any
 */
record Evidence(
        Order order,
        String fileName,
        SessionFindings session,
        String seal,
        List<SheetEntry> sheets,
        List<InstrumentEntry> instruments,
        List<NoteEntry> notes,
        ReadingTally tally,
        Optional<Earlier> earlier,
        Issue issue,
        List<Chart> holdCharts,
        boolean verified) {
    /** @throws CertificateException when the session is altered, still running or holds nothing */
    static Evidence of(Path session, Order order) {
        ChainState chain = verify(session, order.whole());
        String fileName = session.getFileName().toString();
        Evidence evidence = of(session, order, fileName, chain, chain.isKnown(), head -> order.before()
                .map(before -> Earlier.of(before, head)));
        return order.folder()
                .map(folder -> evidence.issued(Issue.after(folder, evidence)))
                .orElse(evidence);
    }

    /** The same, for another order. */
    Evidence ordered(Order other) {
        return new Evidence(
                other,
                fileName,
                session,
                seal,
                sheets,
                instruments,
                notes,
                tally,
                other.before().map(before -> Earlier.of(before, session.head())),
                issue,
                holdCharts,
                verified);
    }

    /** What a certificate was made from before. */
    static Evidence again(Path session, Making making) {
        return of(
                        session,
                        making.order(),
                        making.fileName(),
                        ChainState.of(session, making.verified()),
                        making.verified(),
                        head -> making.earlier())
                .issued(making.issue());
    }

    private static Evidence of(
            Path session,
            Order order,
            String fileName,
            ChainState chain,
            boolean verified,
            Function<SessionHead, Optional<Earlier>> earlier) {
        try (SessionFile file = SessionFile.open(session)) {
            if (file.state() == SessionState.RUNNING) {
                throw new CertificateException(session + ": is still being recorded; wait for its end");
            }
            SessionHead head = file.head();
            if (file.seal().length() != Digest.DIGITS) {
                throw new CertificateException(session + ": carries no digest yet; it was cut off in its first second");
            }
            SessionFindings findings = SessionFindings.of(file, chain);
            List<String> rails = new Points(findings.findings().points(), findings.design()).rails();
            return new Evidence(
                    order,
                    fileName,
                    findings,
                    file.seal(),
                    file.sheets(),
                    file.instruments(),
                    file.notes(),
                    ReadingTally.of(file, rails),
                    earlier.apply(head),
                    Issue.FIRST,
                    Stream.concat(
                                    new WaveformCharts(file).all().stream(),
                                    new HoldCharts(
                                                    file,
                                                    rails,
                                                    findings.findings().soak())
                                            .all().stream())
                            .toList(),
                    verified);
        }
    }

    private Evidence issued(Issue wanted) {
        return new Evidence(
                order,
                fileName,
                session,
                seal,
                sheets,
                instruments,
                notes,
                tally,
                earlier,
                wanted,
                holdCharts,
                verified);
    }

    /** Nothing is certified that was altered; a session too long to be worked out in passing is left to verify. */
    private static ChainState verify(Path session, boolean whole) {
        ChainState chain = ChainState.of(session, whole);
        if (chain.isBroken()) {
            throw new CertificateException(
                    session + ": no certificate of it: " + chain.words(), new StoreException(chain.words()));
        }
        return chain;
    }

    /** Whether a plan was run; else the readings were imported. */
    boolean wasRun() {
        return imported().isEmpty()
                && sheets.stream().anyMatch(sheet -> sheet.kind().equals("plan"));
    }

    /** Where the readings came from, where they were brought in. */
    Optional<String> imported() {
        return session.events().stream()
                .filter(event -> event.is(EventKind.IMPORT))
                .map(EventEntry::text)
                .findFirst();
    }

    boolean rehearsal() {
        return session.head().rehearsal();
    }

    Headline headline() {
        return Headline.of(session);
    }

    String number() {
        return PaperNumber.of(this);
    }

    /** Digest of all figures with their U and verdicts, to tell whether another paper says the same. */
    String figuresDigest() {
        return Digest.of(FigureRow.judgedFirst(session.findings()).stream()
                .map(row -> row.label() + " " + row.valueText() + " " + row.expandedText() + " " + row.limitText() + " "
                        + row.verdictText())
                .collect(Collectors.joining("\n")));
    }

    /** Name, and serial number where it has one. */
    String unit() {
        SessionHead head = session.head();
        return head.unitName() + (head.unitSerial().isEmpty() ? "" : ", serial " + head.unitSerial());
    }
}
