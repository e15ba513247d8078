package underhook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;

/** What the server proves itself with: a key and its certificate in a PKCS 12 file. */
final class Certificate {
    /** Opens the file; never a word of the command line, which others see. */
    static final String PASSWORD_VARIABLE = "UNDERHOOK_CERTIFICATE_PASSWORD";

    private Certificate() {}

    /**
     * Reads it.
     *
     * @throws IOException with a plain sentence when it cannot be used
     */
    static SSLContext read(Path file, String password) throws IOException {
        try {
            char[] opens = password.toCharArray();
            KeyStore store = KeyStore.getInstance(file.toFile(), opens);
            KeyManagerFactory keys =
                    KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            keys.init(store, opens);
            SSLContext tls = SSLContext.getInstance("TLS");
            tls.init(keys.getKeyManagers(), null, null);
            return tls;
        } catch (GeneralSecurityException wrong) {
            throw new IOException(
                    file + " holds no key that can be used, or the password is another.", wrong);
        }
    }
}
