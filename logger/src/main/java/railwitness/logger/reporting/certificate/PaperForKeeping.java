package railwitness.logger.reporting.certificate;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/** What makes a document one that can be kept for decades: PDF/A-2, level A (ISO 19005-2), in English, with its title. */
public final class PaperForKeeping {
    private static final int PART = 2;
    private static final float VERSION = 1.7f;

    private PaperForKeeping() {}

    /** @param issued also what the document's identifier comes from, so that the same paper has the same one */
    public static void inform(PDDocument document, String title, Instant issued) throws IOException {
        PDDocumentInformation information = document.getDocumentInformation();
        String creator = "railwitness " + ProgramBuild.text();
        Calendar at = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        at.setTimeInMillis(issued.toEpochMilli());
        information.setTitle(title);
        information.setCreator(creator);
        information.setCreationDate(at);
        document.setVersion(VERSION);
        document.setDocumentId(issued.toEpochMilli());
        document.getDocumentCatalog().setLanguage("en");
        PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        colours(document);
        PDMetadata metadata = new PDMetadata(document);
        metadata.importXMPMetadata(described(title, information.getSubject(), creator, at));
        document.getDocumentCatalog().setMetadata(metadata);
    }

    private static void colours(PDDocument document) throws IOException {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(profile));
        intent.setInfo("sRGB IEC61966-2.1");
        intent.setOutputCondition("sRGB IEC61966-2.1");
        intent.setOutputConditionIdentifier("sRGB IEC61966-2.1");
        document.getDocumentCatalog().addOutputIntent(intent);
    }

    private static byte[] described(String title, String subject, String creator, Calendar at) throws IOException {
        try {
            XMPMetadata description = XMPMetadata.createXMPMetadata();
            PDFAIdentificationSchema kept = description.createAndAddPDFAIdentificationSchema();
            kept.setPart(PART);
            kept.setConformance("A");
            var core = description.createAndAddDublinCoreSchema();
            core.setTitle(title);
            if (subject != null) {
                core.setDescription(subject);
            }
            core.addLanguage("en");
            var basic = description.createAndAddXMPBasicSchema();
            basic.setCreateDate(at);
            basic.setCreatorTool(creator);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            new XmpSerializer().serialize(description, bytes, true);
            return bytes.toByteArray();
        } catch (BadFieldValueException | TransformerException e) {
            throw new IOException("its description cannot be written: " + e.getMessage(), e);
        }
    }
}
