package railwitness.drivers.line;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;

/** The calls of the C library that make a pseudo-terminal (POSIX.1-2001; cfmakeraw is BSD and glibc). */
interface Terminals extends Library {
    int READ_WRITE = 2;
    int READABLE = 1;

    int posix_openpt(int flags) throws LastErrorException;

    int grantpt(int master) throws LastErrorException;

    int unlockpt(int master) throws LastErrorException;

    String ptsname(int master);

    int open(String path, int flags) throws LastErrorException;

    int close(int descriptor) throws LastErrorException;

    NativeLong read(int descriptor, byte[] bytes, NativeLong count) throws LastErrorException;

    NativeLong write(int descriptor, byte[] bytes, NativeLong count) throws LastErrorException;

    int poll(Memory descriptors, NativeLong count, int timeoutMillis) throws LastErrorException;

    int tcgetattr(int descriptor, Pointer termios) throws LastErrorException;

    int tcsetattr(int descriptor, int when, Pointer termios) throws LastErrorException;

    void cfmakeraw(Pointer termios);
}
