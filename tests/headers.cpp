// SPDX-License-Identifier: Apache-2.0
// Nothing of its own: what the test programs include most is compiled once, beside it.
