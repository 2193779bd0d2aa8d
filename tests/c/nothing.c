/* An image that does nothing: what it weighs is not the library's. */

int main(void) {
    return 0;
}
