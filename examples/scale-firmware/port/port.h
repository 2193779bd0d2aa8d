/* What start-up and the emulator's port share. */

#ifndef PORT_H
#define PORT_H

/* What a fault ends the run with, so that an emulator does not hang. */
enum { EXIT_AFTER_FAULT = 124 };

int main(void);

/* Ends the run. A scale would start again instead. */
_Noreturn void port_exit(int code);

#endif
