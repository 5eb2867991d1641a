#include "scenes/command_line/command_line.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <cerrno>
#include <exception>
#include <system_error>

namespace scenes {

namespace {

constexpr int done = 0;
constexpr int our_fault = 1;
constexpr int your_fault = 2;

/// Refuses to go on after a failed write; the reason is the system's last one.
void check(const std::ostream& out)
{
    if (!out) {
        throw sim::RequestError("cannot write to the standard output" +
                                (errno == 0 ? "" : ": " + std::generic_category().message(errno)));
    }
}

void put(std::ostream& out, std::string_view text)
{
    errno = 0;
    out.write(text.data(), static_cast<std::streamsize>(text.size()));
    check(out);
}

void finish(std::ostream& out)
{
    errno = 0;
    out.flush();
    check(out);
}

/// Does each kind of request and gives the exit code.
struct Doer {
    std::ostream& out;
    std::ostream& errors;
    const ScreenCommands& screen;

    int operator()(const PrintRequest& request) const { return print(request.text); }
    int operator()(const ListRequest& request) const { return print(list_text(request)); }
    int operator()(const TraceRequest& request) const
    {
        trace(request, [this](std::string_view text) { put(out, text); });
        finish(out);
        return done;
    }
    int operator()(const CheckRequest& request) const { return print(check_text(request)); }
    int operator()(const TellApartRequest& request) const
    {
        return finished(tell_apart(request, out, errors));
    }
    int operator()(const OrderRequest& request) const
    {
        return finished(do_order(request, out, errors));
    }
    int operator()(const MarkRequest& request) const
    {
        return finished(mark_records(request, out, errors));
    }
    int operator()(const SoundRequest& request) const
    {
        write_sound(request);
        return done;
    }
    int operator()(const ShotRequest& request) const { return screen.take_shot(request); }
    int operator()(const PicturesRequest& request) const { return screen.take_pictures(request); }
    int operator()(const WindowRequest& request) const { return screen.open_window(request); }

private:
    [[nodiscard]] int finished(bool is_well) const
    {
        finish(out);
        return is_well ? done : our_fault;
    }
    [[nodiscard]] int print(std::string_view text) const
    {
        put(out, text);
        finish(out);
        return done;
    }
};

/// Says in one line what went wrong, whatever is in the message.
int complain(std::ostream& errors, const std::string& message, int code)
{
    errors << "standpipe: " << sim::printable(message) << '\n' << std::flush;
    return code;
}

} // namespace

int run_command_line(const std::vector<std::string>& words, std::ostream& out, std::ostream& errors,
                     const ScreenCommands& screen)
{
    try {
        return std::visit(Doer{out, errors, screen}, parse_command_line(words));
    } catch (const sim::AssetError& error) {
        return complain(errors, error.what(), your_fault);
    } catch (const sim::RequestError& error) {
        return complain(errors, error.what(), your_fault);
    } catch (const sim::NumericsError& error) {
        return complain(errors, error.what(), our_fault);
    } catch (const std::exception& error) {
        return complain(errors, std::string("internal error: ") + error.what(), our_fault);
    }
}

} // namespace scenes
