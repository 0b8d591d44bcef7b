package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;

/**
 * Whether two parts of PDF files are the same however the files number, pack and order them: dictionaries key by key,
 * streams by their unpacked bytes.
 */
final class SameObject {
    private static final Set<COSName> OF_THE_PACKING =
            Set.of(COSName.PARENT, COSName.LENGTH, COSName.FILTER, COSName.DECODE_PARMS, COSName.getPDFName("Length1"));

    private final Set<Long> compared = new HashSet<>();

    private SameObject() {}

    static boolean of(COSBase one, COSBase other) throws IOException {
        return new SameObject().same(one, other);
    }

    private boolean same(COSBase first, COSBase second) throws IOException {
        COSBase one = direct(first);
        COSBase other = direct(second);
        if (one == null || other == null) {
            return one == other;
        }
        if (one instanceof COSNumber number && other instanceof COSNumber otherNumber) {
            return number.floatValue() == otherNumber.floatValue();
        }
        if (one.getClass() != other.getClass()) {
            return false;
        }
        if (one instanceof COSDictionary || one instanceof COSArray) {
            long pair = (long) System.identityHashCode(one) << 32 | System.identityHashCode(other) & 0xffffffffL;
            if (!compared.add(pair)) {
                return true;
            }
        }
        if (one instanceof COSDictionary dictionary) {
            return sameDictionary(dictionary, (COSDictionary) other);
        }
        if (one instanceof COSArray array) {
            return sameArray(array, (COSArray) other);
        }
        return one.equals(other);
    }

    private static COSBase direct(COSBase base) {
        return base instanceof COSObject object ? object.getObject() : base;
    }

    private boolean sameArray(COSArray one, COSArray other) throws IOException {
        if (one.size() != other.size()) {
            return false;
        }
        for (int i = 0; i < one.size(); i++) {
            if (!same(one.get(i), other.get(i))) {
                return false;
            }
        }
        return true;
    }

    private boolean sameDictionary(COSDictionary one, COSDictionary other) throws IOException {
        if (!keys(one).equals(keys(other))) {
            return false;
        }
        for (COSName key : keys(one)) {
            if (!same(one.getItem(key), other.getItem(key))) {
                return false;
            }
        }
        return !(one instanceof COSStream stream) || sameBytes(stream, (COSStream) other);
    }

    private static Set<COSName> keys(COSDictionary dictionary) {
        Set<COSName> keys = new TreeSet<>(dictionary.keySet());
        keys.removeAll(OF_THE_PACKING);
        return keys;
    }

    private static boolean sameBytes(COSStream one, COSStream other) throws IOException {
        try (InputStream a = one.createInputStream();
                InputStream b = other.createInputStream()) {
            return java.util.Arrays.equals(a.readAllBytes(), b.readAllBytes());
        }
    }
}
