#pragma once

#include <string>
#include <vector>

namespace shop {

/// The files of all work orders there are: those shipped, then a person's own.
std::vector<std::string> order_files();

/// The file of an order that is named by a path or by an id.
///
/// throws:  RequestError when there is none
std::string order_file(const std::string& path_or_id);

/// The folder of a person's own orders, of records of work on orders, and of drafts of orders;
/// empty when the platform names none.
std::string own_orders_folder();
std::string records_folder();
std::string drafts_folder();

} // namespace shop
