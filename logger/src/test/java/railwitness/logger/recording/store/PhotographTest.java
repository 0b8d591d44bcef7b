package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PhotographTest {
    /** SHA-256 of the three letters "abc", FIPS 180-4, example B.1 (from memory). */
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path folder;

    @Test
    void aPictureNamedAtTheEndIsKeptBesideTheSessionWithItsDigest() throws Exception {
        Path picture = Files.writeString(folder.resolve("my picture.JPG"), "abc", StandardCharsets.US_ASCII);
        Path session = folder.resolve("0412.session");
        String note = Photograph.kept("bulged top " + picture, session);
        assertThat(note).isEqualTo("bulged top [photograph 0412-photo-1.jpg, SHA-256 " + ABC + "]");
        assertThat(folder.resolve("0412-photo-1.jpg")).hasContent("abc");
        assertThat(Photograph.kept(picture.toString(), session)).startsWith("[photograph 0412-photo-2.jpg,");
    }

    @Test
    void wordsAloneStayAsTheyAre() {
        for (String note : new String[] {"fan off from here", "see photo.jpg", "1/2 turn more", "a/b"}) {
            assertThat(Photograph.kept(note, folder.resolve("0412.session"))).isEqualTo(note);
        }
    }

    @Test
    void aPictureThatIsNotThereIsNamedAndNothingIsLeft() {
        assertThatThrownBy(() -> Photograph.kept("look " + folder.resolve("gone.png"), folder.resolve("0412.session")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("gone.png: this photograph cannot be kept");
        assertThat(folder.resolve("0412-photo-1.png")).doesNotExist();
    }
}
