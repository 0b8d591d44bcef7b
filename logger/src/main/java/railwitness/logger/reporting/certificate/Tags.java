package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;

/** What every piece of the pages is: headings, paragraphs, tables, figures; and bookmarks to the headings. */
final class Tags {
    private static final Set<String> HOLD_NO_TEXT = Set.of("Document", "Sect", "Table", "TR");
    private static final COSName ARTIFACT = COSName.getPDFName("Artifact");
    private static final COSName FIGURE = COSName.getPDFName("Figure");
    private static final COSName NUMBERS = COSName.getPDFName("Nums");

    private final PDDocument document;
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final List<COSArray> parents = new ArrayList<>();
    private PDStructureElement now;
    private PDPage page;
    private int place;
    private boolean beside;

    Tags(PDDocument document) {
        this.document = document;
        now = new PDStructureElement("Document", root);
        root.appendKid(now);
    }

    /** Goes on on that page. */
    void page(PDPage sheet, int at) {
        page = sheet;
        place = at;
        if (at == parents.size()) {
            parents.add(new COSArray());
            sheet.setStructParents(at);
            sheet.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        }
    }

    void part(String role, Runnable content) {
        in(element(role), content);
    }

    PDStructureElement open(String role) {
        return element(role);
    }

    void in(PDStructureElement part, Runnable content) {
        PDStructureElement around = now;
        now = part;
        try {
            content.run();
        } finally {
            now = around;
        }
    }

    private PDStructureElement element(String role) {
        PDStructureElement part = new PDStructureElement(role, now);
        now.appendKid(part);
        return part;
    }

    /** What is set in there belongs to the page, not to the document. */
    void beside(Runnable content) {
        boolean before = beside;
        beside = true;
        content.run();
        beside = before;
    }

    /**
     * Begins a piece of text.
     *
     * @param actual the text where the glyphs stand in another order; empty where they say it themselves
     */
    void begin(PDPageContentStream stream, String actual) throws IOException {
        if (beside) {
            stream.beginMarkedContent(ARTIFACT);
            return;
        }
        PDStructureElement owner = HOLD_NO_TEXT.contains(now.getStructureType()) ? element("P") : now;
        if (!actual.isEmpty()) {
            PDStructureElement span = new PDStructureElement("Span", owner);
            span.setActualText(actual);
            owner.appendKid(span);
            owner = span;
        }
        refer(stream, owner, COSName.getPDFName(owner.getStructureType()));
    }

    private void refer(PDPageContentStream stream, PDStructureElement owner, COSName role) throws IOException {
        COSArray here = parents.get(place);
        PDMarkedContentReference reference = new PDMarkedContentReference();
        reference.setPage(page);
        reference.setMCID(here.size());
        owner.appendKid(reference);
        stream.beginMarkedContent(role, here.size());
        here.add(owner.getCOSObject());
    }

    void figure(PDPageContentStream stream, String words) throws IOException {
        if (beside) {
            stream.beginMarkedContent(ARTIFACT);
            return;
        }
        PDStructureElement figure = element("Figure");
        figure.setAlternateDescription(words);
        refer(stream, figure, FIGURE);
    }

    /** Begins a line or a shape that says nothing of its own. */
    void artifact(PDPageContentStream stream) throws IOException {
        stream.beginMarkedContent(ARTIFACT);
    }

    void bookmark(String words, PDPage sheet, float fromBelow) {
        PDPageXYZDestination place = new PDPageXYZDestination();
        place.setPage(sheet);
        place.setTop((int) fromBelow);
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(words);
        item.setDestination(place);
        outline.addLast(item);
    }

    /** Ties the tree to the document. */
    void finish() {
        COSArray numbers = new COSArray();
        for (int i = 0; i < parents.size(); i++) {
            numbers.add(COSInteger.get(i));
            numbers.add(parents.get(i));
        }
        COSDictionary tree = new COSDictionary();
        tree.setItem(NUMBERS, numbers);
        root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
        root.setParentTreeNextKey(parents.size());
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(marked);
        document.getDocumentCatalog().setStructureTreeRoot(root);
        document.getDocumentCatalog().setDocumentOutline(outline);
    }
}
